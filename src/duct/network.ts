import type { Air } from '../air/air.ts';
import { BLOWER, type Ductwork, type Section } from './ductwork.ts';
import type { FilterState } from './elements/element.ts';
import type { Element } from './elements/index.ts';
import { placeTerms, type PlacedTerm } from './placed-terms.ts';
import { compileLosses, type LossTable } from './loss-table.ts';

/** What a ductwork is compiled for. */
export type Conditions = {
  air: Air;
  /** ids of the pick-up sections whose gates are open; a pick-up without a gate is always open */
  open: Iterable<string>;
  filterState: FilterState;
  /** blower's outlet [m2]; used when `discharge` is empty and the outlet's velocity pressure is lost */
  outletArea_m2?: number | null;
};

/**
 * A ductwork made ready for solving: structure of arrays, one row per section that can pass air ("active"), children before
 * parents, plus the run behind the blower as the last row of the loss table. Never changed after compiling; several states
 * may be solved on it.
 */
export type Network = {
  readonly air: Air;
  readonly filterState: FilterState;
  readonly sections: readonly Section[];
  readonly discharge: readonly Element[];
  readonly outletArea_m2: number | null;
  /** 1 where the section starts at an open machine; by section, in the job's order */
  readonly open: Uint8Array;
  /** section index each one flows into, −1 the blower; in the job's order */
  readonly target: Int32Array;
  /** sections, children before parents; all of them, active or not */
  readonly order: Int32Array;
  /** active row of each section, −1 where no air can pass */
  readonly rowOf: Int32Array;
  /** section of each active row */
  readonly sectionOf: Int32Array;
  /** active row that each active row flows into; the number of active rows stands for the blower */
  readonly parent: Int32Array;
  /** 1 where an active row starts at the room */
  readonly leaf: Uint8Array;
  /** losses of the active rows; row `activeCount` is the discharge run */
  readonly losses: LossTable;
  readonly activeCount: number;
  /** every loss by section (job's order; the last list is the discharge), with its element: for budget and doubt */
  readonly terms: readonly (readonly PlacedTerm[])[];
  /** no machine is open and no closed gate leaks: no air passes at any suction, the system curve is a wall at zero flow */
  readonly blocked: boolean;
};

/** Contraction and friction of a thin slot or hole [-]: Q = 0.6·A·√(2Δp/ρ), after the job contract. */
const LEAK_DISCHARGE_COEFFICIENT = 0.6;
/** A leak below a square micrometre is none. */
const SHUT_TIGHT_M2 = 1e-12;

/** Sections, children before parents, by counting what flows into each. */
function childrenFirst(target: Int32Array): Int32Array {
  const waiting = new Int32Array(target.length);
  for (const t of target) if (t >= 0) waiting[t]!++;
  const order = new Int32Array(target.length);
  let filled = 0;
  for (let i = 0; i < target.length; i++) if (waiting[i] === 0) order[filled++] = i;
  for (let next = 0; next < filled; next++) {
    const t = target[order[next]!]!;
    if (t >= 0 && --waiting[t]! === 0) order[filled++] = t;
  }
  if (filled < target.length)
    throw new RangeError('compileNetwork: sections flow in a circle; check the ductwork first');
  return order;
}

/** Where each section flows, by index. */
function targetsOf(sections: readonly Section[]): Int32Array {
  const index = new Map(sections.map(({ id }, i) => [id, i]));
  return Int32Array.from(sections, ({ id, into }) => {
    const target = into === BLOWER ? -1 : index.get(into);
    if (target === undefined)
      throw new RangeError(`compileNetwork: section ${id} flows nowhere; check the ductwork first`);
    return target;
  });
}

/** Quadratic coefficient of a closed gate's leak [Pa/(m3/s)²]; 0 when open, Infinity when shut tight. */
function leakCoefficient({ gate, pickup }: Section, isOpen: boolean, density_kg_m3: number): number {
  if (pickup == null || isOpen) return 0;
  const area_m2 = gate?.closedLeakArea_m2 ?? 0;
  return area_m2 > SHUT_TIGHT_M2 ? density_kg_m3 / (2 * (LEAK_DISCHARGE_COEFFICIENT * area_m2) ** 2) : Infinity;
}

/**
 * Makes a ductwork ready for solving in given air, with given gates open and filters clean or loaded.
 * A pick-up's closed gate becomes a leak in series with its section, or, without a leak, takes the section out. Gates on
 * trunks are taken as open: plans name machines. An empty discharge loses the blower's outlet velocity pressure when
 * `outletArea_m2` is given, and nothing otherwise.
 * @throws RangeError for a ductwork in which `ductworkIssues` finds something: check first
 */
export function compileNetwork(ductwork: Ductwork, conditions: Conditions): Network {
  const { sections } = ductwork;
  const { air, filterState } = conditions;
  const discharge = ductwork.discharge ?? [];
  const opened = new Set(conditions.open);
  const target = targetsOf(sections);
  const order = childrenFirst(target);
  const open = Uint8Array.from(sections, ({ id, pickup, gate }) =>
    pickup != null && (gate == null || opened.has(id)) ? 1 : 0,
  );
  const leak = Float64Array.from(sections, (section, i) => leakCoefficient(section, open[i] === 1, air.density_kg_m3));

  const carries = new Uint8Array(sections.length);
  for (const i of order) {
    if (sections[i]!.pickup != null && leak[i]! < Infinity) carries[i] = 1;
    if (carries[i] && target[i]! >= 0) carries[target[i]!] = 1;
  }
  const sectionOf = order.filter((i) => carries[i] === 1);
  const activeCount = sectionOf.length;
  const rowOf = new Int32Array(sections.length).fill(-1);
  sectionOf.forEach((section, row) => (rowOf[section] = row));
  const parent = sectionOf.map((section) => (target[section]! < 0 ? activeCount : rowOf[target[section]!]!));
  const leaf = Uint8Array.from(sectionOf, (section) => (sections[section]!.pickup != null ? 1 : 0));

  const outletArea_m2 = conditions.outletArea_m2 ?? null;
  const context = { air, filterState };
  const terms = [
    ...sections.map(({ elements }) => placeTerms(elements, context)),
    discharge.length > 0 ? placeTerms(discharge, context) : blowingFreely(outletArea_m2),
  ];
  const rows = [...sectionOf, sections.length].map((section) => ({
    terms: terms[section]!,
    leak: section < sections.length ? leak[section]! : 0,
  }));
  return {
    air,
    filterState,
    sections,
    discharge,
    outletArea_m2,
    open,
    target,
    order,
    rowOf,
    sectionOf,
    parent,
    leaf,
    losses: compileLosses(rows, air, leaf),
    activeCount,
    terms,
    blocked: activeCount === 0,
  };
}

/** A blower without a run behind it loses its outlet velocity pressure to the open. */
function blowingFreely(outletArea_m2: number | null): PlacedTerm[] {
  if (outletArea_m2 === null) return [];
  const doubt = { kind: 'exit', sd: 0 } as const;
  return [{ term: { law: 'velocity-pressure', k: 1, area_m2: outletArea_m2, doubt }, element: -1, part: 'way-out' }];
}
