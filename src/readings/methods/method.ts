import type { Issue, Warning } from '../../issues/result.ts';
import type { Bench } from '../bench.ts';
import type { Method as MethodName, Rig, Row } from '../schema.ts';

/** One way of finding the flow in a test pipe. Forms, checks and the reduction read these records; no code branches on the name. */
export type Method = {
  method: MethodName;
  label: string;
  standard: string;
  source: string;
  help: string;
  /** fields of the rig and of a row that belong to this method, in the order a form shows them */
  rigFields: readonly (keyof Rig)[];
  rowFields: readonly (keyof Row)[];
  /** what the rig must tell: one of these sets of fields (round pipe, or width and height) */
  rigNeeds: readonly (readonly (keyof Rig)[])[];
  /** volume flow in the air of the rig [m3/s], ≥ 0 and finite for a row that has what it needs */
  flow(bench: Bench, row: Row): number;
  /** the blower's pressure [Pa], where it is not simply what the tap reads corrected for velocity and friction */
  pressure?(bench: Bench, row: Row, flow_m3_s: number): number;
  /** why this row says nothing, or null */
  useless?(bench: Bench, row: Row): string | null;
  /** a rig that can't be; `path` is the pointer of the rig */
  impossibleRig?(rig: Rig, path: string): Issue[];
  /** rows that can't be in such a rig; `path` is the pointer of the row */
  impossible?(rig: Rig, row: Row, path: string): Issue[];
  /** what is worth a second look in the rig; `path` is the pointer of the rig */
  rigDoubtful?(rig: Rig, path: string): Warning[];
  /** what is worth a second look in a row; `path` is the pointer of the row */
  doubtful?(bench: Bench, row: Row, path: string): Warning[];
};
