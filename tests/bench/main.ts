import { benchAssessment } from './assessment.ts';
import { benchChart } from './chart.ts';
import { benchSolver } from './solver.ts';

await benchSolver();
benchAssessment();
await benchChart();
