import { highestSafeSpeed } from '../../fan/tip-speed.ts';
import type { Blower } from '../../job/types.ts';
import { driveRatio, pulleyPairs, type PulleyPair } from '../../motor/index.ts';
import { formatQuantity } from '../../units/format.ts';
import { at, set, type ChangeMaker, type ChangeSituation } from '../change.ts';
import { testedWithOldDrive } from '../tested-with.ts';

/** How far a wheel of unknown history is slowed down or sped up, against its speed now. Common practice, no source. */
const SLOWEST = 0.65;
const FASTEST = { rimUnknown: 1.35, rimKnown: 1.6 };
/** Speeds that differ less than this are one proposal: near the present speed, and further off. */
const STEP = { near: 0.025, far: 0.05, nearUpTo: 0.125 };

/** Another pulley pair: the whole curve moves with the speed, the power with its cube. */
export const pulley: ChangeMaker = {
  kind: 'pulley',
  propose(situation) {
    const { job, index, judged } = situation;
    const blower = job.blowers[index]!;
    const speed = judged.candidate.speed_rpm;
    const { ratio, known } = driveRatio(blower.drive);
    if (blower.drive.kind !== 'belt' || !known || speed === null) return [];
    const sorted = pairsFor(situation, speed / ratio, speed);
    return sorted.map((p) => ({
      values: {
        motorPulley_m: p.motorPulleyDiameter_m,
        wheelPulley_m: p.wheelPulleyDiameter_m,
        speed_rpm: p.wheelSpeed_rpm,
      },
      what: `${pulleyWords(blower, p)}: the wheel then turns at ${formatQuantity(p.wheelSpeed_rpm, 'rpm')}`,
      patch: [
        set(at('blowers', index, 'drive', 'motorPulleyDiameter_m'), p.motorPulleyDiameter_m),
        set(at('blowers', index, 'drive', 'wheelPulleyDiameter_m'), p.wheelPulleyDiameter_m),
        ...(blower.runSpeed_rpm == null ? [] : [set(at('blowers', index, 'runSpeed_rpm'), p.wheelSpeed_rpm)]),
        ...testedWithOldDrive(blower, index),
      ],
    }));
  },
};

/** "an 80 mm pulley", "a 90 mm pulley": by how the figure is said. */
const article = (words: string): string => (/^(8|11\D|18\D)/.test(words) ? 'an' : 'a');

function pulleyWords(
  { drive }: Blower,
  pair: { motorPulleyDiameter_m: number; wheelPulleyDiameter_m: number },
): string {
  const mm = (d: number) => formatQuantity(d, 'mm');
  const changed = [
    ...(pair.motorPulleyDiameter_m !== drive.motorPulleyDiameter_m
      ? [`${mm(pair.motorPulleyDiameter_m)} pulley on the motor`]
      : []),
    ...(pair.wheelPulleyDiameter_m !== drive.wheelPulleyDiameter_m
      ? [`${mm(pair.wheelPulleyDiameter_m)} pulley on the wheel`]
      : []),
  ];
  return `Put ${changed.map((c) => `${article(c)} ${c}`).join(' and ')}`;
}

/** Pairs that make the wheel faster where air is short and slower where the motor is overloaded, small steps first. */
export function pairsFor(
  { job, index, motorOverloaded, needsAir }: ChangeSituation,
  motorSpeed_rpm: number,
  speed_rpm: number,
): PulleyPair[] {
  const { drive, wheel } = job.blowers[index]!;
  const safe = highestSafeSpeed(wheel);
  const fastest = Math.min(speed_rpm * (safe === null ? FASTEST.rimUnknown : FASTEST.rimKnown), safe ?? Infinity);
  const have = drive.kind === 'belt' ? drive : undefined;
  const between = (low: number, high: number) =>
    pulleyPairs({ motorSpeed_rpm, wheelSpeed_rpm: [low, high], ...(have && { have }) });
  return [
    ...(motorOverloaded ? oneOfEachStep(between(SLOWEST * speed_rpm, 0.985 * speed_rpm), speed_rpm) : []),
    ...(needsAir && fastest > speed_rpm ? oneOfEachStep(between(1.015 * speed_rpm, fastest), speed_rpm) : []),
  ];
}

/** Of pairs of nearly the same speed the one with fewest pulleys to buy. */
function oneOfEachStep(pairs: readonly PulleyPair[], speed_rpm: number): PulleyPair[] {
  const steps = new Map<number, PulleyPair>();
  for (const pair of pairs) {
    const away = Math.abs(Math.log(pair.wheelSpeed_rpm / speed_rpm));
    const width = away < STEP.nearUpTo ? STEP.near : STEP.far;
    const step = width * Math.round(away / width);
    const other = steps.get(step);
    if (other === undefined || pair.newPulleys < other.newPulleys) steps.set(step, pair);
  }
  return [...steps].sort((a, b) => a[0] - b[0]).map(([, pair]) => pair);
}
