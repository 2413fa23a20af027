import { benchSolver } from './solver.ts';

await benchSolver();
