/**
 * How many blunders are named, and how often a clean test is doubted.
 *   node --import tsx tests/reference/rigs/measure-blunders.ts [how many] [first index] [world] [family] [kinds]
 */
import { tried, type Catch, type Trial } from './caught.ts';
import { BLUNDER_KINDS, type BlunderKind } from './seeded-blunders.ts';
import type { TrueFamily } from './true-wheels.ts';
import type { World } from './worlds.ts';

const count = Number(process.argv[2] ?? 600);
const first = Number(process.argv[3] ?? 700_000);
const world = (process.argv[4] ?? 'own') as World;
const family = (process.argv[5] || undefined) as TrueFamily | undefined;
const kinds = (process.argv[6]?.split(',') ?? BLUNDER_KINDS) as readonly BlunderKind[];
const verbose = process.env.VERBOSE !== undefined;

const trials: Trial[] = [];
for (let i = 0; i < count; i++) {
  const trial = tried(1, first + i, kinds, world, family ? { family } : {});
  if (!trial) continue;
  trials.push(trial);
  if (!verbose) continue;
  if (trial.falseAlarm.length > 0) console.log(first + i, 'ALARM', trial.family, trial.falseAlarm.join());
  for (const c of trial.catches)
    if (c.moved && !c.named)
      console.log(
        first + i,
        c.kind,
        trial.family,
        c.said.map((w) => `${w.code} ${w.path}`),
      );
}
const percent = (n: number, of: number) => (of === 0 ? '–' : `${((100 * n) / of).toFixed(1)} %`);
const share = (of: readonly Catch[], is: (c: Catch) => boolean) => percent(of.filter(is).length, of.length);
const columns = (...cells: (string | number)[]) => console.log(cells.map((c) => String(c).padEnd(14)).join(''));

console.log(`${world}, ${family ?? 'all families'}, ${trials.length} finds from ${first}`);
columns('blunder', 'made', 'move', 'named', 'at its place', 'other place', 'nothing said');
const shares: number[] = [];
for (const kind of kinds) {
  const made = trials.flatMap((t) => t.catches.filter((c) => c.kind === kind));
  const moved = made.filter((c) => c.moved);
  if (moved.length > 0) shares.push(moved.filter((c) => c.named).length / moved.length);
  columns(
    kind,
    made.length,
    moved.length,
    share(moved, (c) => c.named),
    share(moved, (c) => c.placed),
    share(moved, (c) => !c.placed && c.said.length > 0),
    share(moved, (c) => c.said.length === 0),
  );
}
const mean = shares.reduce((a, b) => a + b, 0) / shares.length;
console.log(`named, every kind weighing the same: ${(100 * mean).toFixed(1)} %`);

const alarms = trials.filter((t) => t.falseAlarm.length > 0);
const codes = new Map<string, number>();
for (const code of alarms.flatMap((t) => [...new Set(t.falseAlarm)])) codes.set(code, (codes.get(code) ?? 0) + 1);
console.log(`false alarms ${percent(alarms.length, trials.length)} of ${trials.length}`, Object.fromEntries(codes));
