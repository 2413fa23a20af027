import type { Job, ReadingsEvidence } from '../../src/job/types.ts';
import type { Method, Row } from '../../src/readings/schema.ts';
import type { ColumnQuantity, HeadQuantity } from '../sheet/sheet-reading.ts';
import type { HalfTyped } from '../state/doc.ts';
import type { Edited } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { addEvidence } from './add-evidence.ts';

/** One figure of a sheet: base unit, and the words for it with their unit. */
export type SheetFigure = { quantity: ColumnQuantity; value: number; text: string };

export type TakeSheet = {
  blowerId: string;
  /** the notebook's place among the blower's evidence */
  index: number;
  photoId: string;
  rows: readonly (readonly SheetFigure[])[];
  head: { readonly [Name in HeadQuantity]?: number };
};

export type TakenSheet = Edited & {
  /** where the rows went: the same notebook, or a new one beside it */
  index: number;
  /** figures of rows whose pressure is not known yet: they wait below the table */
  halfTyped: HalfTyped;
};

/** What a column says of the air, and the method of our notebook that measures it so. The first that is there decides. */
const SIGNALS: readonly (readonly [ColumnQuantity, Method])[] = [
  ['orificeDiameter_m', 'orifice-cap'],
  ['velocityPressure_Pa', 'pitot-traverse'],
  ['velocity_m_s', 'vane-traverse'],
  ['flow_m3_s', 'vane-traverse'],
];
/** Also measured with a hole of a known size. */
const WITH_HOLE: readonly Method[] = ['orifice-cap', 'orifice-in-pipe'];

/** The method a sheet's columns were measured with; the notebook's own where they do not tell. */
export function methodOf(quantities: readonly ColumnQuantity[], own: Method): Method {
  const found = SIGNALS.find(([quantity]) => quantities.includes(quantity));
  if (!found) return own;
  return found[0] === 'orificeDiameter_m' && WITH_HOLE.includes(own) ? own : found[1];
}

/** Whether flows must be turned into speeds of air, for which the width of the pipe is needed. */
export const needsPipe = (quantities: readonly ColumnQuantity[]): boolean =>
  quantities.includes('flow_m3_s') &&
  methodOf(quantities, 'bag-fill') === 'vane-traverse' &&
  !quantities.includes('velocity_m_s');

/**
 * Adds a sheet's rows to a notebook and keeps the photo there, in one step. Nothing that is there is changed: where the notebook
 * holds rows measured another way, the sheet becomes a notebook of its own.
 */
export function takeSheet(job: Job, data: TakeSheet): TakenSheet {
  const at = job.blowers.findIndex(({ id }) => id === data.blowerId);
  const own = job.blowers[at]?.evidence[data.index];
  if (own?.kind !== 'readings') return { job, note: 'sheet', index: data.index, halfTyped: {} };
  const method = methodOf([...new Set(data.rows.flat().map(({ quantity }) => quantity))], own.rig.method);
  const isOther = own.rows.length > 0 && own.rig.method !== method;
  const fresh: ReadingsEvidence = { kind: 'readings', rig: { method }, rows: [] };
  const added = isOther ? addEvidence(job, { blowerId: data.blowerId, evidence: fresh }) : null;
  const index = added?.index ?? data.index;
  const path = `/blowers/${at}/evidence/${index}`;
  const before = added ? fresh : own;
  const evidence = withPhoto(withHead({ ...before, rig: { ...before.rig, method } }, data.head), data.photoId);
  return { ...withRows(withValueAt(added?.job ?? job, path, evidence), path, evidence, data), note: 'sheet', index };
}

/** What the sheet's head says of pipe and air; what the notebook knows already stays. */
function withHead(evidence: ReadingsEvidence, head: TakeSheet['head']): ReadingsEvidence {
  const { rig, air } = evidence;
  const filled = {
    temperature_C: air?.temperature_C ?? head.airTemperature_C,
    barometricPressure_Pa: air?.barometricPressure_Pa ?? head.barometer_Pa,
  };
  const saysAir = filled.temperature_C != null || filled.barometricPressure_Pa != null;
  const pipeDiameter_m = rig.pipeDiameter_m ?? head.ductDiameter_m;
  return {
    ...evidence,
    rig: pipeDiameter_m == null ? rig : { ...rig, pipeDiameter_m },
    ...(saysAir && { air: { ...air, ...filled } }),
  };
}

function withPhoto(evidence: ReadingsEvidence, photoId: string): ReadingsEvidence {
  const kept = [evidence.photoId, ...(evidence.morePhotoIds ?? [])].filter((id) => id != null);
  if (kept.includes(photoId)) return evidence;
  if (kept.length === 0) return { ...evidence, photoId };
  return { ...evidence, morePhotoIds: [...(evidence.morePhotoIds ?? []), photoId] };
}

function withRows(
  job: Job,
  path: string,
  evidence: ReadingsEvidence,
  { rows, head }: TakeSheet,
): { job: Job; halfTyped: HalfTyped } {
  const finished = rows.filter(hasPressure);
  const waiting = rows.filter((row) => !hasPressure(row) && row.length > 0);
  const asTyped = { ...job.asTyped };
  const halfTyped: HalfTyped = {};
  const newRows = finished.map((figures, i) => {
    const cells = figures.flatMap((figure) => cellOf(figure, evidence));
    for (const { field, text } of cells) if (text) asTyped[`${path}/rows/${evidence.rows.length + i}/${field}`] = text;
    return {
      ...Object.fromEntries(cells.map(({ field, value }) => [field, value])),
      ...(head.voltage_V !== undefined && { voltage_V: head.voltage_V }),
    } as Row;
  });
  const count = evidence.rows.length + newRows.length;
  waiting.forEach((figures, i) => {
    for (const { field, text } of figures.flatMap((figure) => cellOf(figure, evidence)))
      if (text) halfTyped[`${path}/rows/${count + i}/${field}`] = text;
  });
  return { job: { ...withValueAt(job, `${path}/rows`, [...evidence.rows, ...newRows]), asTyped }, halfTyped };
}

const hasPressure = (row: readonly SheetFigure[]): boolean =>
  row.some(({ quantity }) => quantity === 'staticPressure_Pa');

type Cell = { field: keyof Row; value: number | number[]; text: string | null };

/** Where a figure stands in a row of the notebook; a flow stands there as the speed of the air in the pipe. */
function cellOf({ quantity, value, text }: SheetFigure, { rig }: ReadingsEvidence): Cell[] {
  switch (quantity) {
    case 'opening':
    case 'opening_pct':
      return [];
    case 'velocityPressure_Pa':
      return [{ field: 'velocityPressures_Pa', value: [value], text: null }];
    case 'velocity_m_s':
      return [{ field: 'velocities_m_s', value: [value], text: null }];
    case 'flow_m3_s':
      return rig.method === 'vane-traverse' && rig.pipeDiameter_m
        ? [{ field: 'velocities_m_s', value: [value / (Math.PI * (rig.pipeDiameter_m / 2) ** 2)], text: null }]
        : [];
    default:
      return [{ field: quantity, value, text }];
  }
}
