/**
 * Does the first measurement that is advised settle a verdict more often than another one of the same list, taken blindly?
 *   node --import tsx tests/reference/shops/measure-next.ts [how many shops] [first index]
 */
import { measurementTrials, settled } from './measurement-trials.ts';

const trials = measurementTrials(3, Number(process.argv[3] ?? 0), Number(process.argv[2] ?? 150));
const { first, atRandom } = settled(trials);
const promised = trials.reduce((sum, t) => sum + t.advice[0]!.promised, 0);
console.log(
  `${trials.length} unsure: the first settles ${first} (promised ${promised.toFixed(1)}), one taken blindly ${atRandom.toFixed(1)}`,
);
const all = trials.flatMap((t) => t.advice);
for (const kind of new Set(all.map((m) => m.measurement))) {
  const own = all.filter((m) => m.measurement === kind);
  const sum = own.reduce((s, m) => s + m.promised, 0);
  console.log(
    kind.padEnd(18),
    `${own.length} promised ${sum.toFixed(1)} settled ${own.filter((m) => m.settles).length}`,
  );
}
