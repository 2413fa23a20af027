import { fileURLToPath } from 'node:url';
import { builtPage } from './build.ts';

try {
  await builtPage(fileURLToPath(new URL('../..', import.meta.url)), console.log);
} catch (error) {
  console.error((error as Error).message);
  process.exitCode = 1;
}
