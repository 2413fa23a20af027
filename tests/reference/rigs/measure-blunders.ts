/**
 * How many blunders are named, and how often a clean test is doubted.
 *   node --import tsx tests/reference/rigs/measure-blunders.ts [how many] [first index] [world]
 */
import { tried } from './caught.ts';
import { BLUNDER_KINDS } from './seeded-blunders.ts';
import type { World } from './worlds.ts';

const count = Number(process.argv[2] ?? 600);
const first = Number(process.argv[3] ?? 700_000);
const world = (process.argv[4] ?? 'own') as World;
const trials = Array.from({ length: count }, (_, i) =>
  tried(1, first + i, BLUNDER_KINDS[i % BLUNDER_KINDS.length]!, world),
).flatMap((t) => t ?? []);
for (const kind of BLUNDER_KINDS) {
  const moved = trials.flatMap((t) => (t.catch?.kind === kind && t.catch.rows >= 5 && t.catch.moved ? [t.catch] : []));
  const all = trials.filter((t) => t.catch?.kind === kind).length;
  const share = (n: number) => `${((100 * n) / moved.length).toFixed(1)} %`;
  console.log(
    kind.padEnd(14),
    `${moved.length} of ${all} move the answer; warned ${share(moved.filter((c) => c.warned).length)}, named at the place ${share(moved.filter((c) => c.named).length)}`,
  );
}
const moved = trials.flatMap((t) => (t.catch?.moved ? [t.catch] : []));
console.log(
  `together named ${((100 * moved.filter((c) => c.named).length) / moved.length).toFixed(1)} % of ${moved.length}`,
);
const alarms = trials.filter((t) => t.falseAlarm.length > 0);
const codes = new Map<string, number>();
for (const code of alarms.flatMap((t) => [...new Set(t.falseAlarm)])) codes.set(code, (codes.get(code) ?? 0) + 1);
console.log(
  `false alarms ${((100 * alarms.length) / trials.length).toFixed(1)} % of ${trials.length}`,
  Object.fromEntries(codes),
);
