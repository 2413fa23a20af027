import type { CutStep } from '../../src/readings/index.ts';
import type { Row } from '../../src/readings/schema.ts';
import type { HalfTyped } from '../state/doc.ts';

/** Nearer than this two holes are one and the same [m]: the doubt of a rule and a hand-cut edge. */
const SAME_HOLE_m = 0.002;

/** Whether a planned reading stands in the table already. */
export const isTaken = ({ row }: CutStep, rows: readonly Row[]): boolean =>
  rows.some(
    (r) =>
      r.orificeDiameter_m != null &&
      row.orificeDiameter_m != null &&
      Math.abs(r.orificeDiameter_m - row.orificeDiameter_m) < SAME_HOLE_m,
  );

/** A hole as it is written into a row: millimetres to a tenth, with the unit, so that it means the same in any column. */
export const holeText = (hole_m: number): string => (hole_m === 0 ? '0' : `${Math.round(hole_m * 10_000) / 10} mm`);

/** How many rows below the finished ones hold half-typed cells: rows put down before their tube is read. */
export function waitingRows(texts: HalfTyped, rowsPath: string, finished: number): number {
  const prefix = `${rowsPath}/`;
  const indices = Object.keys(texts)
    .filter((key) => key.startsWith(prefix))
    .map((key) => Number(key.slice(prefix.length).split('/')[0]));
  return Math.max(0, ...indices.map((index) => index + 1 - finished));
}

/** The planned holes that are not measured yet, as half-typed rows below the finished ones; half-typed rows give way to them. */
export function withPlannedRows(
  texts: HalfTyped,
  rowsPath: string,
  rows: readonly Row[],
  steps: readonly CutStep[],
): HalfTyped {
  const kept = Object.fromEntries(Object.entries(texts).filter(([key]) => !key.startsWith(`${rowsPath}/`)));
  steps
    .filter((step) => !isTaken(step, rows))
    .forEach(({ row }, i) => {
      kept[`${rowsPath}/${rows.length + i}/orificeDiameter_m`] = holeText(row.orificeDiameter_m ?? 0);
    });
  return kept;
}
