import { figureText } from '../plate/figure-text.ts';
import { readQuantity } from '../forms/quantity-text.ts';
import type { Quantity } from '../../src/units/index.ts';
import { HEAD_FORMS } from './column-forms.ts';
import type { HeadQuantity, HeadField } from './sheet-reading.ts';
import type { SheetWork } from './sheet-work.ts';

/** A figure from the head of the sheet as it stands on the page. */
export type ShownHead = {
  readonly name: HeadQuantity;
  readonly quantity: Quantity;
  readonly unit: string;
  readonly text: string;
  readonly value: number | null;
  readonly read: HeadField | null;
  readonly isAsked: boolean;
};

/** What the notebook has a place for; the mains' frequency stands in the job already. */
const TAKEN: readonly HeadQuantity[] = ['ductDiameter_m', 'voltage_V', 'airTemperature_C', 'barometer_Pa'];

/**
 * The head of a sheet: what was read or said of it, and `wanted` even where nothing was.
 * @param unitOf the unit of a bare number
 */
export function shownHead(
  { reading, head }: SheetWork,
  wanted: readonly HeadQuantity[],
  unitOf: (name: HeadQuantity) => string,
): ShownHead[] {
  return TAKEN.filter((name) => reading?.fields[name] ?? head[name] ?? wanted.includes(name)).map((name) => {
    const read = reading?.fields[name] ?? null;
    const said = head[name];
    const quantity = HEAD_FORMS[name];
    const unit = unitOf(name);
    const only = numberOf(read);
    const readText = only === null ? '' : figureText(only, read?.asPrinted ?? '', quantity, unit);
    const text = said?.text ?? readText;
    const typed = readQuantity(text, quantity, unit);
    const value = only !== null && text === readText ? only : typed.ok ? typed.si : null;
    return { name, quantity, unit, text, value, read, isAsked: read?.needsReview === true && !said };
  });
}

/** A field that stands there once. */
function numberOf(read: HeadField | null): number | null {
  if (!read) return null;
  if (typeof read.value === 'number') return read.value;
  return read.value.length === 1 ? read.value[0]! : null;
}
