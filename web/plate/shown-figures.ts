import type { Supply } from '../../src/job/types.ts';
import type { PlateField, PlateReading } from '../../src/plate/reading.ts';
import { readQuantity } from '../forms/quantity-text.ts';
import { figureText } from './figure-text.ts';
import { FIGURES, type FigureForm, type PlateFigure, type PlateKind } from './plate-fields.ts';
import type { PlateWork } from './plate-work.ts';
import { ratingsOf, suitedTo, type RatingChoice } from './ratings.ts';

/**
 * How sure a figure is: read without doubt; doubted until somebody says it is right; said by a person; printed several times
 * and one must be told; or not there.
 */
export type Standing = 'sure' | 'doubted' | 'said' | 'several' | 'missing';

/** One figure as it stands on the page: what was read and what was said, put together. */
export type ShownFigure = {
  readonly form: FigureForm;
  readonly unit: string;
  readonly text: string;
  /** base unit; null where nothing that can be read stands there */
  readonly value: number | null;
  readonly printed: string;
  readonly field: PlateField | null;
  readonly standing: Standing;
  /** the reader doubts it, whatever was said since: it keeps its place and room on the page */
  readonly isAsked: boolean;
};

/** What the figures are read with: the shop's mains, and the unit in which this user reads a quantity. */
export type Reading = { readonly supply: Supply; readonly unitOf: (form: FigureForm) => string };

/** A plate that speaks of air or a wheel and of no volts or amps is a bare blower's. */
export function kindOfPlate(reading: PlateReading | null): PlateKind {
  const fields = reading?.fields ?? {};
  const isElectric = fields.voltage_V ?? fields.current_A ?? fields.phases ?? fields.powerFactor;
  const isOfAir = fields.flow_m3_s ?? fields.pressure_Pa ?? fields.wheelDiameter_m;
  return isOfAir && !isElectric ? 'blower' : 'motor';
}

/** The ways this motor may be run, and which of them is chosen. */
export function chosenRating(work: PlateWork, supply: Supply): { choices: RatingChoice[]; chosen: number } {
  if (!work.reading) return { choices: [], chosen: 0 };
  const choices = ratingsOf(work.reading);
  const phases = work.reading.fields.phases?.value;
  const suited = suitedTo(choices, supply, phases === 1 || phases === 3 ? phases : null);
  const chosen = work.rating !== undefined && work.rating < choices.length ? work.rating : suited;
  return { choices, chosen };
}

/** Every figure that was read, said, or must be named as missing, in the order of the plate. */
export function shownFigures(work: PlateWork, { supply, unitOf }: Reading): ShownFigure[] {
  const { choices, chosen } = chosenRating(work, supply);
  const kind = kindOfPlate(work.reading);
  return FIGURES.flatMap((form) => {
    const field = work.reading?.fields[form.name] ?? null;
    const isWanted = field || work.said[form.name]?.text !== undefined || form.needed.includes(kind);
    return isWanted ? [shownFigure(form, field, choices[chosen], work, unitOf(form))] : [];
  });
}

function shownFigure(
  form: FigureForm,
  field: PlateField | null,
  rating: RatingChoice | undefined,
  work: PlateWork,
  unit: string,
): ShownFigure {
  const said = work.said[form.name];
  const read_SI = readValue(form.name, field, rating);
  const printed = field?.asPrinted ?? '';
  const isList = Array.isArray(field?.value) && field.value.length > 1;
  const readText = read_SI === null ? '' : figureText(read_SI, isList ? '' : printed, form.quantity, unit);
  const text = said?.text ?? readText;
  const typed = readQuantity(text, form.quantity, unit);
  const isAsRead = read_SI !== null && text === readText;
  const value = text.trim() === '' || !typed.ok ? null : isAsRead ? read_SI : typed.si;
  const isSaid = said?.text !== undefined || said?.seen === true;
  const standing = standingOf({ isSaid, isEmpty: text.trim() === '', isList, field });
  const isAsked = field === null || field.needsReview || (isList && read_SI === null);
  return { form, unit, text, value, printed, field, standing, isAsked };
}

function readValue(name: PlateFigure, field: PlateField | null, rating: RatingChoice | undefined): number | null {
  const chosen = rating?.values[name];
  if (chosen !== undefined) return chosen;
  const value = Array.isArray(field?.value) ? (field.value.length === 1 ? field.value[0] : null) : field?.value;
  return typeof value === 'number' ? value : null;
}

function standingOf(is: { isSaid: boolean; isEmpty: boolean; isList: boolean; field: PlateField | null }): Standing {
  if (is.isEmpty) return is.isList ? 'several' : 'missing';
  if (is.isSaid) return 'said';
  return is.field?.needsReview ? 'doubted' : 'sure';
}

/** Whether a figure goes into the job: it can be read as a number and nobody has to look at it first. */
export const isReady = ({ value, standing }: ShownFigure): boolean =>
  value !== null && (standing === 'sure' || standing === 'said');
