import { checkJob } from '../../../src/index.ts';
import { findBlunders } from '../../../src/evidence/blunders.ts';
import { judge, placeOf } from '../../../src/judge.ts';
import { siteAir } from '../../../src/air/index.ts';
import { invent, type Invented, type Wishes } from './invent.ts';
import { randomFrom } from './random.ts';
import { withBlunder, type Blundered, type BlunderKind } from './seeded-blunders.ts';
import type { TrueFamily } from './true-wheels.ts';
import { wishesIn, type World } from './worlds.ts';

/** Codes that say a reading is wrong. Others tell of assumptions and limits, in clean tests too. */
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
  'motor-reading-doubtful',
  'suction-too-small',
]);

/** Enough possible truths to tell one standard deviation. */
const DRAWS = 200;

type Said = { code: string; path: string };
type Point = { flow: number; flowSd: number; pressure: number; pressureSd: number };
type Seen = { point: Point | null; said: Said[] };

/** What the program answers to a job, and what it doubts in it. A job it does not take is one without an answer. */
function seen(raw: Invented['job']): Seen {
  const checked = checkJob(JSON.parse(JSON.stringify(raw)));
  if (!checked.ok) return { point: null, said: checked.issues };
  const judgement = judge(checked.value, DRAWS);
  const { candidate } = judgement.blowers[0]!;
  const place = placeOf(checked.value, siteAir(checked.value.site).air, 0);
  const found = candidate.estimate ? findBlunders(candidate.blower, place, candidate.estimate) : [];
  const at = judgement.assessment.cases[0]!.operatingPoint;
  const sd = ([low, high]: readonly [number, number]) => (high - low) / 3.92;
  return {
    point: at && {
      flow: at.flow_m3_s,
      flowSd: sd(at.interval95.flow_m3_s),
      pressure: at.totalPressure_Pa,
      pressureSd: sd(at.interval95.totalPressure_Pa),
    },
    said: [...judgement.assessment.warnings, ...found],
  };
}

/** `moved`: the answer is off by more than one standard deviation, or gone. */
export type Catch = {
  kind: BlunderKind;
  moved: boolean;
  /** something stands at the right place */
  placed: boolean;
  /** and its code says what happened */
  named: boolean;
  /** doubts that the clean test did not raise */
  said: Said[];
};
export type Trial = { family: TrueFamily; falseAlarm: string[]; catches: Catch[] };

/** One find of five rows or more, clean and with each of these blunders that can be made in it; null where it has no answer clean. */
export function tried(
  seed: number,
  index: number,
  kinds: readonly BlunderKind[],
  world: World = 'own',
  wishes: Wishes = {},
): Trial | null {
  const random = randomFrom(seed, index);
  const find = invent(random, { ...wishesIn(world, random), ...wishes, rows: [5, 8] });
  if (find.tested === null || find.tested.rows.length < 5) return null;
  // half of the owners measure how far off the tap is
  if (random.chance(0.5)) forgetLengths(find.job);
  const clean = seen(find.job);
  if (clean.point === null) return null;
  const catches = kinds.flatMap((kind, k): Catch[] => {
    const blundered = withBlunder(find, kind, randomFrom(seed + 1 + k, index));
    return blundered ? [caught(kind, blundered, clean, seen(blundered.job))] : [];
  });
  return { family: find.family, falseAlarm: clean.said.map((w) => w.code).filter((c) => CODES.has(c)), catches };
}

function forgetLengths(job: Invented['job']) {
  const { rig } = (job.blowers[0]!.evidence as { rig: Record<string, unknown> }[])[0]!;
  delete rig.lengthToTap_m;
  delete rig.lengthTapToBlower_m;
}

function caught(kind: BlunderKind, { codes, places }: Blundered, clean: Seen, after: Seen): Catch {
  const before = new Set(clean.said.map((w) => `${w.code} ${w.path}`));
  const said = after.said.filter((w) => !before.has(`${w.code} ${w.path}`));
  const at = (w: Said) =>
    places.some((p) => w.path === `/blowers/0/evidence/0${p}` || w.path.startsWith(`/blowers/0/evidence/0${p}/`));
  const here = said.filter((w) => at(w) && (CODES.has(w.code) || codes.includes(w.code) || after.point === null));
  const [was, is] = [clean.point!, after.point];
  return {
    kind,
    moved:
      is === null || Math.abs(is.flow - was.flow) > was.flowSd || Math.abs(is.pressure - was.pressure) > was.pressureSd,
    placed: here.length > 0,
    named: here.some((w) => codes.includes(w.code)),
    said,
  };
}
