import { fileURLToPath } from 'node:url';
import { builtPage } from './build.ts';

await builtPage(fileURLToPath(new URL('../..', import.meta.url)), console.log);
