import type { Warning } from '../issues/result.ts';
import type { Blower, ReadingsEvidence, Supply } from '../job/types.ts';
import { runSpeed } from '../motor/index.ts';
import { rowPath, type Row } from './explanation.ts';
import { sameDrive } from './run-speed.ts';

/** A wheel on its belt that turns this much slower than motor and pulleys promise slips [-]: pulleys are measured to 2 %, slip is 1 %. */
const SLIPS_BELOW = 0.93;
/** Nor does anything make it turn this much faster, or a wheel on the motor's own shaft this much slower. */
const TOO_FAST = 1.1;
const TOO_SLOW_DIRECT = 0.85;
/** One row's speed off that of the others: a motor slips a few percent more under load, not so much [-]. */
const ROW_SLOWER = 0.94;
/** A meter's reading so many times that of the other rows has its decimal mark in the wrong place. */
const TENFOLD = 6;
/** An induction motor draws at least a quarter of its plate current, even idling: below this share the clamp held several wires. */
const IDLE_AT_LEAST = 0.12;
/** Above this, it would have burnt. */
const DRAWN_AT_MOST = 4;
/** Rows alike in as many numbers as this were written down twice. */
const ALIKE = 4;

/** Blunders that show without any curve: speeds, amps and rows that cannot be. Paths are below the evidence. */
export function plainBlunders(blower: Blower, supply: Supply, readings: ReadingsEvidence): Warning[] {
  return [
    ...oddSpeeds(blower, supply, readings),
    ...meterSlips(readings),
    ...clampedWrong(blower, readings),
    ...writtenTwice(readings),
  ];
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
};

type Meter = 'speed_rpm' | 'current_A' | 'inputPower_W';
const read = (rows: readonly Row[], field: Meter) =>
  rows.flatMap((row, i) => (row[field] == null ? [] : [{ i, value: row[field]! }]));

const slip = (path: string, factor: number): Warning => ({
  code: 'decimal-slip',
  path,
  text: `Beside the other rows this value looks ${factor > 1 ? 'ten times too large' : 'ten times too small'}. Look for the decimal mark.`,
});
const percentOff = (ratio: number) => `${Math.round(100 * Math.abs(1 - ratio))} %`;

function oddSpeeds(blower: Blower, supply: Supply, readings: ReadingsEvidence): Warning[] {
  const speeds = read(readings.rows, 'speed_rpm');
  if (speeds.length === 0 || (blower.motor.kind ?? 'induction') !== 'induction') return [];
  const middle = median(speeds.map((s) => s.value));
  const drive = readings.testedWith?.drive ?? blower.drive;
  const worst = speeds.reduce((a, b) =>
    Math.abs(Math.log(b.value / middle)) > Math.abs(Math.log(a.value / middle)) ? b : a,
  );
  const off = worst.value / middle;
  const path = rowPath(worst.i, 'speed_rpm');
  if (speeds.length >= 3 && (off > TENFOLD || off < 1 / TENFOLD)) return [slip(path, off)];
  if (speeds.length >= 3 && off < ROW_SLOWER && drive.kind === 'belt')
    return [
      {
        code: 'belt-slipping',
        path,
        text: `In this row the wheel turned ${percentOff(off)} slower than in the others. Does the belt slip under load? Tighten it and take the row again.`,
      },
    ];
  if (speeds.length >= 3 && (off < ROW_SLOWER || off > 1 / ROW_SLOWER))
    return [
      {
        code: 'speed-doubtful',
        path,
        text: `In this row the speed is ${percentOff(off)} off that of the others. Measure it again.`,
      },
    ];
  if (!sameDrive(readings)) return [];
  const motor = readings.testedWith?.motor ?? blower.motor;
  const promised = runSpeed({ motor, drive, supply });
  if (promised.speed_rpm === null || promised.warnings.length > 0) return [];
  const share = middle / promised.speed_rpm;
  const first = rowPath(speeds[0]!.i, 'speed_rpm');
  if (drive.kind === 'belt' && share < SLIPS_BELOW)
    return [
      {
        code: 'belt-slipping',
        path: first,
        text: `The wheel turns ${percentOff(share)} slower than motor and pulleys promise. Does the belt slip? Tighten it, and measure both pulleys where the belt runs.`,
      },
    ];
  if (share > TOO_FAST || share < TOO_SLOW_DIRECT)
    return [
      {
        code: 'speed-doubtful',
        path: first,
        text: `The wheel is said to turn ${percentOff(share)} ${share > 1 ? 'faster' : 'slower'} than its motor can drive it. Measure the speed again, and look at the motor’s plate.`,
      },
    ];
  return [];
}

/** Amps or watts ten times those of the other rows, or a tenth. */
const meterSlips = ({ rows }: ReadingsEvidence): Warning[] =>
  (['current_A', 'inputPower_W'] as const).flatMap((field) => {
    const values = read(rows, field);
    if (values.length < 3) return [];
    const middle = median(values.map((v) => v.value));
    const odd = values.find(({ value }) => value / middle > TENFOLD || middle / value > TENFOLD);
    return odd ? [slip(rowPath(odd.i, field), odd.value / middle)] : [];
  });

function clampedWrong({ motor }: Blower, readings: ReadingsEvidence): Warning[] {
  const amps = read(readings.rows, 'current_A');
  const plate = (readings.testedWith?.motor ?? motor).current_A;
  if (amps.length === 0 || plate == null || !sameDrive(readings) || (motor.kind ?? 'induction') !== 'induction')
    return [];
  const share = median(amps.map((a) => a.value)) / plate;
  const path = rowPath(amps[0]!.i, 'current_A');
  if (share < IDLE_AT_LEAST)
    return [
      {
        code: 'clamp-all-wires',
        path,
        text: 'These amps are less than the motor draws idling. Were all wires in the clamp? Then their currents cancel: put the clamp around one wire only.',
      },
    ];
  if (share > DRAWN_AT_MOST)
    return [
      {
        code: 'decimal-slip',
        path,
        text: 'These amps are many times those of the plate: the motor would have burnt. Look for the decimal mark, and whether the wire ran through the clamp several times.',
      },
    ];
  return [];
}

function writtenTwice({ rows }: ReadingsEvidence): Warning[] {
  const told = rows.map((row) =>
    Object.values(row)
      .flat()
      .filter((v) => v != null),
  );
  const again = rows.findIndex((_, j) =>
    told.some((other, i) => i < j && other.length >= ALIKE && JSON.stringify(other) === JSON.stringify(told[j])),
  );
  if (again === -1) return [];
  return [
    {
      code: 'row-repeated',
      path: rowPath(again),
      text: 'This row is the same as one above in every number. Was it written down twice? Delete it, or it counts double.',
    },
  ];
}
