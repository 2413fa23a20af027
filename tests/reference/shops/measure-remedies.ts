/**
 * How many blowers that fall short are given a remedy, whether the changed job is a yes, and whether it then holds in truth.
 *   node --import tsx tests/reference/shops/measure-remedies.ts [how many] [first index]
 */
import { remedyTrials } from './remedy-trials.ts';

const trials = remedyTrials(3, Number(process.argv[3] ?? 0), Number(process.argv[2] ?? 100));
const given = trials.flatMap((t) => t.remedies);
const measurable = trials.filter((t) => !t.reasons.includes('outside-evidence'));
const helped = (of: typeof trials) => `${of.filter((t) => t.remedies.length > 0).length} of ${of.length}`;
console.log(`helped ${helped(trials)}; where the curve is known at all ${helped(measurable)}`);
console.log(
  `${given.length} remedies: ${given.filter((r) => r.isYes).length} judged yes, ${given.filter((r) => r.holds).length} hold in truth`,
);
for (const kind of new Set(given.map((r) => r.kind))) console.log(kind, given.filter((r) => r.kind === kind).length);
for (const t of trials) for (const r of t.remedies) if (!r.holds) console.log(t.index, r.probability, r.kind, r.text);
