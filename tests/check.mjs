// `npm run check`: types, lint and format, without running a test.
import { everything } from './house.mjs';

const { passed, failed } = everything();
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
