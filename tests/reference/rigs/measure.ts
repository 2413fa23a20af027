/**
 * How often `interval95` holds the truth, and how wide it is, over invented finds.
 *   node --import tsx tests/reference/rigs/measure.ts [how many] [first index] [world] [evidence mix]
 */
import type { EvidenceMix } from './other-evidence.ts';
import { judged } from './judged.ts';
import { randomFrom } from './random.ts';
import { report } from './tally.ts';
import { wishesIn, type World } from './worlds.ts';

const count = Number(process.argv[2] ?? 1000);
const first = Number(process.argv[3] ?? 0);
const world = (process.argv[4] ?? 'own') as World;
const mix = process.argv[5] as EvidenceMix | undefined;
const started = process.hrtime.bigint();
const results = Array.from({ length: count }, (_, i) =>
  judged(1, first + i, { ...wishesIn(world, randomFrom(2, first + i)), ...(mix ? { mix } : {}) }),
).flat();
console.log(report(results));
console.log(`${count} finds, ${results.length} cases, ${Number((process.hrtime.bigint() - started) / 1_000_000n)} ms`);
