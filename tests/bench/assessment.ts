import { readFileSync } from 'node:fs';
import { assess, checkJob, type Job } from '../../src/index.ts';
import { compileNetwork, createState, solveAtFlow } from '../../src/duct/index.ts';
import { printTimings, race } from './measure.ts';

/** The shop with the most cases that a phone is asked about: the demo, two blowers, every plan, clean and full filters. */
function demoJob(): Job {
  const raw: unknown = JSON.parse(
    readFileSync(new URL('../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'),
  );
  const checked = checkJob(raw);
  if (!checked.ok) throw new Error(`the demo job is refused: ${checked.issues[0]?.message}`);
  return checked.value;
}

/** Prints how long a whole assessment takes beside one thousand solves of the same ducts, in one run. */
export function benchAssessment(): void {
  const job = demoJob();
  const open = job.ductwork.sections.flatMap((s) => (s.pickup ? [s.id] : []));
  const air = assess(job).air;
  const network = compileNetwork(job.ductwork, { air, open, filterState: 'clean' });
  const state = createState(network);
  let flow = 0.2;
  const solves = () => {
    for (let i = 0; i < 1000; i++) {
      flow = flow > 0.3 ? 0.2 : flow * 1.05;
      solveAtFlow(network, flow, state);
    }
  };
  const cases = assess(job).cases.length;
  printTimings(
    `Assessment of the demo job: ${job.blowers.length} blowers, ${cases} cases with bands (aim: 50,000 µs)`,
    race([
      { name: 'assess, everything', run: () => void assess(job) },
      { name: '1,000 solves of the same ducts', run: solves },
    ]),
    '1,000 solves of the same ducts',
  );
}
