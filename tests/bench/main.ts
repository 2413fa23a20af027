import { benchAssessment } from './assessment.ts';
import { benchSolver } from './solver.ts';

await benchSolver();
benchAssessment();
