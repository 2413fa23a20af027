import type { PatchOperation } from '../../assessment.ts';
import { highestSafeSpeed } from '../../fan/tip-speed.ts';
import type { Blower } from '../../job/types.ts';
import { driveRatio, pulleyPairs } from '../../motor/index.ts';
import { formatQuantity } from '../../units/format.ts';
import { at, set, type ChangeMaker } from '../change.ts';

/** How far a wheel of unknown history is sped up or slowed down, against its speed now. Common practice, no source. */
export const SPEED_RANGE = { up: 1.35, down: 0.65 };
const MOST_PAIRS = 12;

/** Another pulley pair: the whole curve moves with the speed, the power with its cube. */
export const pulley: ChangeMaker = {
  kind: 'pulley',
  propose({ job, index, judged, motorOverloaded }) {
    const blower = job.blowers[index]!;
    const speed = judged.candidate.speed_rpm;
    const { ratio, known } = driveRatio(blower.drive);
    if (blower.drive.kind !== 'belt' || !known || speed === null) return [];
    const safe = highestSafeSpeed(blower.wheel) ?? Infinity;
    const pairs = pulleyPairs({
      motorSpeed_rpm: speed / ratio,
      wheelSpeed_rpm: motorOverloaded
        ? [SPEED_RANGE.down * speed, 0.99 * speed]
        : [1.01 * speed, Math.min(SPEED_RANGE.up * speed, safe)],
      have: blower.drive,
    });
    // one new pulley is a smaller change than two, a small step smaller than a large one
    const step = (p: (typeof pairs)[number]) => Math.abs(Math.log(p.wheelSpeed_rpm / speed));
    const sorted = [...pairs].sort((a, b) => a.newPulleys - b.newPulleys || step(a) - step(b)).slice(0, MOST_PAIRS);
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

/** Readings keep the drive and motor they were taken with, or measured speed and old amps would cancel the change. */
export function testedWithOldDrive(blower: Blower, index: number): PatchOperation[] {
  return blower.evidence.flatMap((e, i) =>
    e.kind === 'readings' && (e.rig.sameDrive ?? true) && e.testedWith == null
      ? [set(at('blowers', index, 'evidence', i, 'testedWith'), { drive: blower.drive, motor: blower.motor })]
      : [],
  );
}
