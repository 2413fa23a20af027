/**
 * How often the verdict is wrong, how often it is left open, and whether stated chances hold, over invented shops.
 *   node --import tsx tests/reference/shops/measure.ts [how many] [first index]
 */
import { judge } from '../../../src/judge.ts';
import { checked } from '../rigs/judged.ts';
import { inventShop } from './invent-shop.ts';
import { trulyHolds } from './truth.ts';

const count = Number(process.argv[2] ?? 300);
const first = Number(process.argv[3] ?? 0);
type Row = {
  index: number;
  mix: string;
  plan: string;
  electrical: string;
  family: string;
  verdict: string;
  chance: number;
  holds: boolean;
  reasons: string;
};
const rows: Row[] = [];
for (let i = first; i < first + count; i++) {
  const shop = inventShop(3, i);
  const { find } = shop;
  if (find.tested === null && find.mix.startsWith('readings')) continue;
  for (const c of judge(checked(find)).assessment.cases.filter((c) => c.filterState === 'clean'))
    rows.push({
      index: i,
      mix: find.mix,
      electrical: find.electrical,
      family: find.family,
      plan: c.gatePlan,
      verdict: c.verdict,
      chance: c.probability,
      holds: trulyHolds(shop, c.gatePlan),
      reasons: c.reasons
        .filter((r) => r.severity !== 'note')
        .map((r) => r.code)
        .join(' '),
    });
}
const show = (name: string, of: readonly Row[]) => {
  if (of.length === 0) return;
  const yes = of.filter((r) => r.verdict === 'yes');
  const no = of.filter((r) => r.verdict === 'no');
  const wrongYes = yes.filter((r) => !r.holds).length;
  const wrongNo = no.filter((r) => r.holds).length;
  const unsure = of.length - yes.length - no.length;
  const bins = Array.from({ length: 10 }, (_, b) => of.filter((r) => Math.min(9, Math.floor(10 * r.chance)) === b));
  const off = bins.reduce((s, b) => s + Math.abs(b.reduce((t, r) => t + r.chance - (r.holds ? 1 : 0), 0)), 0);
  const pc = (x: number) => (100 * x).toFixed(1).padStart(5);
  console.log(
    `${name.padEnd(24)}${String(of.length).padStart(5)} yes ${String(yes.length).padStart(4)} wrong ${wrongYes}  no ${String(no.length).padStart(4)} wrong ${wrongNo}  unsure ${pc(unsure / of.length)} %  off ${pc(off / of.length)} points  true ${pc(of.filter((r) => r.holds).length / of.length)} %`,
  );
};
show('all', rows);
for (const key of ['mix', 'electrical', 'family'] as const)
  for (const v of new Set(rows.map((r) => r[key])))
    show(
      `${key} ${v}`,
      rows.filter((r) => r[key] === v),
    );
for (let b = 0; b < 10; b++) {
  const bin = rows.filter((r) => Math.min(9, Math.floor(10 * r.chance)) === b);
  console.log(
    b / 10,
    bin.length,
    (bin.reduce((s, r) => s + r.chance, 0) / bin.length).toFixed(3),
    (bin.filter((r) => r.holds).length / bin.length).toFixed(3),
  );
}
for (const r of rows)
  if ((r.verdict === 'yes' && !r.holds) || (r.verdict === 'no' && r.holds)) console.log(JSON.stringify(r));
