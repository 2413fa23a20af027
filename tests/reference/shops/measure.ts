/**
 * How often the verdict is wrong, how often it is left open, and whether stated chances hold, over invented shops.
 *   node --import tsx tests/reference/shops/measure.ts [how many] [first index] [ideal]
 * With `ideal` also how often somebody who knows every error's size would leave it open.
 */
import { verdictTally, verdictTrials, type VerdictTrial } from './verdict-trials.ts';

const count = Number(process.argv[2] ?? 300);
const first = Number(process.argv[3] ?? 0);
const withIdeal = process.argv.includes('ideal');
const trials = verdictTrials(3, first, count, withIdeal);
const percent = (x: number) => `${(100 * x).toFixed(1).padStart(5)} %`;

function show(name: string, of: readonly VerdictTrial[]) {
  const { cases, yes, wrongYes, no, wrongNo, unsure, off } = verdictTally(of);
  console.log(
    `${name.padEnd(28)}${String(cases).padStart(5)}  yes ${yes} (wrong ${wrongYes})  no ${no} (wrong ${wrongNo})  unsure ${percent(unsure / cases)}  chances off ${percent(off)}`,
  );
}

show('all', trials);
for (const key of ['mix', 'electrical', 'family'] as const)
  for (const value of new Set(trials.map((t) => t[key])))
    show(
      `${key} ${value}`,
      trials.filter((t) => t[key] === value),
    );
if (withIdeal)
  console.log(
    `left open by the ideal observer ${percent(trials.filter((t) => t.ideal === 'unsure').length / trials.length)}`,
  );
for (const t of trials)
  if (t.verdict === 'yes' ? !t.holds : t.verdict === 'no' && t.holds) console.log(JSON.stringify(t));
