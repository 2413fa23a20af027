import { checkJob } from '../../../src/index.ts';
import { findBlunders } from '../../../src/evidence/blunders.ts';
import { judge, placeOf } from '../../../src/judge.ts';
import { siteAir } from '../../../src/air/index.ts';
import type { Warning } from '../../../src/index.ts';
import { invent, type Invented } from './invent.ts';
import { randomFrom } from './random.ts';
import { withBlunder, type BlunderKind } from './seeded-blunders.ts';
import { wishesIn, type World } from './worlds.ts';

const CODES = new Set([
  'one-leg',
  'decimal-slip',
  'swapped-rows',
  'wrong-hole',
  'row-doubtful',
  'near-tap-taken-for-far',
  'far-tap-taken-for-near',
  'level-unusual',
  'wheel-backwards',
  'belt-slipping',
  'unit-mixed',
  'hole-radius',
  'speed-doubtful',
  'row-repeated',
  'clamp-all-wires',
  'suction-too-small',
]);

type Seen = { flow: number; flowSd: number; pressure: number; pressureSd: number; warnings: Warning[] };

/** What the program answers to a job, and what it doubts in its readings. */
function seen(raw: Invented['job']): Seen | null {
  const checked = checkJob(JSON.parse(JSON.stringify(raw)));
  if (!checked.ok) return null;
  const judgement = judge(checked.value);
  const { candidate } = judgement.blowers[0]!;
  const point = judgement.assessment.cases[0]!.operatingPoint;
  if (point === null || candidate.estimate === null) return null;
  const sd = ([low, high]: readonly [number, number]) => (high - low) / 3.92;
  const found = findBlunders(
    candidate.blower,
    placeOf(checked.value, siteAir(checked.value.site).air, 0),
    candidate.estimate,
  );
  return {
    flow: point.flow_m3_s,
    flowSd: sd(point.interval95.flow_m3_s),
    pressure: point.totalPressure_Pa,
    pressureSd: sd(point.interval95.totalPressure_Pa),
    warnings: [...judgement.assessment.warnings, ...found].filter((w) => CODES.has(w.code)),
  };
}

/** `moved`: the answer is off by more than one standard deviation; `named`: a warning stands at the right place. */
export type Catch = {
  kind: BlunderKind;
  rows: number;
  moved: boolean;
  warned: boolean;
  named: boolean;
  codes: string[];
};
export type Trial = { falseAlarm: string[]; catch: Catch | null };

/** One find, clean and with one blunder. */
export function tried(seed: number, index: number, kind: BlunderKind, world: World = 'own'): Trial | null {
  const random = randomFrom(seed, index);
  const find = invent(random, { ...wishesIn(world, random), rows: [5, 8] });
  if (find.tested === null) return null;
  const clean = seen(find.job);
  if (clean === null) return null;
  const falseAlarm = clean.warnings.map((w) => w.code);
  const blundered = withBlunder(find, kind, randomFrom(seed + 1, index));
  const after = blundered && seen(blundered.job);
  if (!blundered) return { falseAlarm, catch: null };
  if (!after) return { falseAlarm, catch: null };
  const moved =
    Math.abs(after.flow - clean.flow) > clean.flowSd || Math.abs(after.pressure - clean.pressure) > clean.pressureSd;
  const here = after.warnings.filter((w) => blundered.places.some((p) => w.path.includes(`/evidence/0${p}`)));
  return {
    falseAlarm,
    catch: {
      kind,
      rows: find.tested.rows.length,
      moved,
      warned: after.warnings.length > 0,
      named: here.length > 0,
      codes: after.warnings.map((w) => w.code),
    },
  };
}
