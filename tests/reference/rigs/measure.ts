/**
 * How often `interval95` holds the truth, and how wide it is, over invented finds.
 *   node --import tsx tests/reference/rigs/measure.ts [how many] [first index]
 */
import { judged } from './judged.ts';
import { report } from './tally.ts';

const count = Number(process.argv[2] ?? 1000);
const first = Number(process.argv[3] ?? 0);
const started = process.hrtime.bigint();
const results = Array.from({ length: count }, (_, i) => judged(1, first + i)).flat();
console.log(report(results));
console.log(`${count} finds, ${results.length} cases, ${Number((process.hrtime.bigint() - started) / 1_000_000n)} ms`);
