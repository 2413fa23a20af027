import { benchAssessment } from './assessment.ts';
import { benchReading } from './reading.ts';
import { READINGS } from './readings.ts';
import { benchSolver } from './solver.ts';

await benchSolver();
benchAssessment();
for (const reading of READINGS) await benchReading(reading);
