import { unitCalled } from '../../units/names.ts';
import type { NamedColumn } from '../heads/name-columns.ts';
import { COLUMN_QUANTITIES, type ColumnQuantity } from '../quantities.ts';
import type { Weighed } from './weigh-column.ts';

/** What the readings of a column look like. */
type Look = {
  readonly least: number;
  readonly most: number;
  readonly decimals: number;
  /** −1 falling, 1 rising, between where neither */
  readonly trend: number;
  /** how much the largest is larger than the smallest, share of the largest */
  readonly change: number;
  /** whether they count the rows */
  readonly isCount: boolean;
};

type Kind = { readonly quantity: ColumnQuantity; readonly unit: string | null; readonly fits: (look: Look) => boolean };

const isRising = ({ trend }: Look) => trend > 0.5;
const isFalling = ({ trend }: Look) => trend < -0.2;
/** Motors draw much without a load: their current and power do not begin at nought. */
const isLoaded = ({ least, most }: Look) => least > 0.15 * most;

/**
 * What readings are by their look, the surest first: speeds hardly change, openings and flows rise from nought, pressure falls
 * at the end. A blower a workshop may own is meant.
 */
const KINDS: readonly Kind[] = [
  { quantity: 'opening', unit: null, fits: ({ isCount }) => isCount },
  { quantity: 'speed_rpm', unit: 'rpm', fits: (l) => l.least > 300 && l.decimals === 0 && l.change < 0.12 },
  {
    quantity: 'opening_pct',
    unit: '%',
    fits: (l) => isRising(l) && l.most === 100 && l.least <= 25 && l.decimals === 0,
  },
  { quantity: 'current_A', unit: 'A', fits: (l) => isLoaded(l) && l.decimals > 0 && l.most < 200 && l.most > 0.8 },
  {
    quantity: 'inputPower_W',
    unit: 'W',
    fits: (l) => isLoaded(l) && l.decimals === 0 && l.most > 100 && l.change > 0.1,
  },
  { quantity: 'inputPower_W', unit: 'kW', fits: (l) => isLoaded(l) && l.decimals > 1 && l.most < 40 },
  { quantity: 'staticPressure_Pa', unit: 'kPa', fits: (l) => isFalling(l) && l.decimals >= 2 && l.most < 30 },
  { quantity: 'staticPressure_Pa', unit: 'mbar', fits: (l) => isFalling(l) && l.decimals === 2 && l.most < 300 },
  { quantity: 'staticPressure_Pa', unit: 'mm water', fits: (l) => isFalling(l) && l.decimals <= 1 && l.most < 700 },
  { quantity: 'staticPressure_Pa', unit: 'Pa', fits: (l) => isFalling(l) && l.decimals === 0 && l.most < 40_000 },
  { quantity: 'velocity_m_s', unit: 'm/s', fits: (l) => isRising(l) && l.decimals === 1 && l.most > 5 && l.most < 60 },
  { quantity: 'flow_m3_s', unit: 'm³/s', fits: (l) => isRising(l) && l.decimals === 3 && l.most < 20 },
  { quantity: 'flow_m3_s', unit: 'm³/min', fits: (l) => isRising(l) && l.decimals === 2 && l.most < 500 },
  { quantity: 'flow_m3_s', unit: 'L/s', fits: (l) => isRising(l) && l.decimals === 1 && l.most > 30 },
  { quantity: 'flow_m3_s', unit: 'm³/h', fits: (l) => isRising(l) && l.decimals === 0 && l.most > 50 },
  { quantity: 'orificeDiameter_m', unit: 'mm', fits: (l) => isRising(l) && l.decimals === 0 && l.most < 200 },
];

/** Guessing by the look is a help to whoever checks it, and never more; but nothing else counts the rows. */
const GUESSED = 0.3;
const COUNTED = 0.9;
const ENOUGH = 4;

/** Columns whose heading could not be read, or whose unit could not, get what their readings look like: to be checked. */
export function guessColumns(
  columns: readonly NamedColumn[],
  values: readonly (readonly (Weighed | null)[])[],
): NamedColumn[] {
  const taken = new Set(columns.flatMap(({ quantity }) => (quantity ? [quantity] : [])));
  return columns.map((column, c) => {
    const isOpen = column.quantity === null;
    if (!isOpen && (column.unit || COLUMN_QUANTITIES[column.quantity!].of === null)) return column;
    const look = lookOf(values[c]!);
    const kind =
      look &&
      KINDS.find(({ quantity, fits }) => (isOpen ? !taken.has(quantity) : quantity === column.quantity) && fits(look));
    if (!kind) return column;
    taken.add(kind.quantity);
    const sureness = kind.quantity === 'opening' ? COUNTED : GUESSED;
    return { quantity: kind.quantity, unit: kind.unit ? unitCalled(kind.unit) : null, sureness };
  });
}

function lookOf(column: readonly (Weighed | null)[]): Look | null {
  const read = column.filter((w) => w !== null);
  if (read.length < ENOUGH) return null;
  const values = read.map(({ value }) => value);
  const steps = values.slice(1).map((v, i) => Math.sign(v - values[i]!));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const decimals = read.map(({ text }) => (text.includes('.') ? text.length - 1 - text.indexOf('.') : 0));
  return {
    least,
    most,
    decimals: decimals.sort((a, b) => a - b)[decimals.length >> 1]!,
    trend: steps.reduce((sum, s) => sum + s, 0) / steps.length,
    change: (most - least) / Math.max(most, 1e-9),
    isCount: column.every((w, row) => w?.value === row + 1),
  };
}
