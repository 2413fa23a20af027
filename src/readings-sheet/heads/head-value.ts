import { toBase, unitCalled } from '../../units/names.ts';
import type { Unit } from '../../units/units.ts';
import type { Spelling } from '../cells/read-number.ts';
import { HEAD_QUANTITIES, type HeadQuantity } from '../quantities.ts';

/** A value of the head: in the base unit, how likely it is right, and what was read. */
export type HeadValue = { readonly value: number; readonly chance: number; readonly asPrinted: string };

/**
 * Units a number of this size is written in where no unit could be read. Ranges do not overlap: a barometer between 850
 * and 1100 is in hectopascal.
 */
const BY_SIZE: Record<HeadQuantity, readonly (readonly [number, number, string])[]> = {
  voltage_V: [[40, 1000, 'V']],
  frequency_Hz: [[10, 400, 'Hz']],
  ductDiameter_m: [
    [60, 2000, 'mm'],
    [0.05, 2, 'm'],
  ],
  airTemperature_C: [
    [-30, 48, '°C'],
    [49, 120, '°F'],
  ],
  barometer_Pa: [
    [50_000, 110_000, 'Pa'],
    [850, 1100, 'hPa'],
    [600, 800, 'mm Hg'],
    [80, 110, 'kPa'],
    [24, 32, 'in Hg'],
    [0.8, 1.1, 'bar'],
  ],
};
/** What mains and laboratories usually have; other values are so much less likely beforehand. */
const USUAL: Partial<Record<HeadQuantity, readonly number[]>> = {
  voltage_V: [110, 115, 120, 127, 200, 208, 220, 230, 240, 380, 400, 415, 440, 460, 480, 500, 575, 600, 690],
  frequency_Hz: [50, 60],
};
const UNUSUAL: Record<HeadQuantity, number> = {
  voltage_V: Math.log(0.25),
  frequency_Hz: Math.log(0.02),
  ductDiameter_m: 0,
  airTemperature_C: 0,
  barometer_Pa: 0,
};
/** Nobody measures a temperature of 5.50 or a frequency of 500. */
const MOST_DECIMALS: Record<HeadQuantity, number> = {
  voltage_V: 1,
  frequency_Hz: 1,
  ductDiameter_m: 3,
  airTemperature_C: 1,
  barometer_Pa: 3,
};

/** A unit none of the numbers can be in was misread: what is said without it is to be looked at. */
const OTHER_UNIT = 0.6;

/** The likeliest value a field can have; null where none of the spellings can be one. @param unit as it was read */
export function headValue(quantity: HeadQuantity, spellings: readonly Spelling[], unit: Unit | null): HeadValue | null {
  const own = valueIn(quantity, spellings, unit);
  if (own || !unit) return own;
  const bySize = valueIn(quantity, spellings, null);
  return bySize && { ...bySize, chance: OTHER_UNIT * bySize.chance };
}

function valueIn(quantity: HeadQuantity, spellings: readonly Spelling[], unit: Unit | null): HeadValue | null {
  const options = spellings.flatMap(({ text, logLikelihood }) => {
    const number = Number(text);
    const decimals = text.includes('.') ? text.length - 1 - text.indexOf('.') : 0;
    const used = unit ?? unitBySize(quantity, number);
    if (!used || decimals > MOST_DECIMALS[quantity] || /^0\d/.test(text)) return [];
    const value = Number(toBase(number, used).toPrecision(7));
    const [low, high] = HEAD_QUANTITIES[quantity].range;
    if (value < low || value > high) return [];
    const prior = USUAL[quantity] && !USUAL[quantity].includes(value) ? UNUSUAL[quantity] : 0;
    return [{ value, asPrinted: `${text} ${used.unit}`, log: logLikelihood + prior, raw: logLikelihood }];
  });
  const best = options.reduce<(typeof options)[number] | null>((a, b) => (a && a.log >= b.log ? a : b), null);
  if (!best) return null;
  const total = options.reduce((sum, o) => sum + Math.exp(o.log - best.log), 0);
  const same = options.filter((o) => o.value === best.value).reduce((sum, o) => sum + Math.exp(o.log - best.log), 0);
  // spellings that can be no such value still say that something else may stand there
  const lost = Math.max(...spellings.map((s) => s.logLikelihood)) - best.raw;
  // mains of another frequency are hardly ever met
  const isRare = quantity === 'frequency_Hz' && !USUAL.frequency_Hz!.includes(best.value);
  // a lone figure is more likely what is left of a number than a number
  const isOdd = isRare || /^\d /.test(best.asPrinted);
  return {
    value: best.value,
    asPrinted: best.asPrinted,
    chance: (isOdd ? 0.5 : 1) * (same / total) * Math.exp(-0.3 * lost),
  };
}

const unitBySize = (quantity: HeadQuantity, number: number): Unit | null => {
  const found = BY_SIZE[quantity].find(([low, high]) => number >= low && number <= high);
  return found ? unitCalled(found[2]) : null;
};
