import type { z } from 'zod';
import type { Air } from '../../air/air.ts';
import type { IssueCode } from '../../issues/codes.ts';

/**
 * Groups of elements that err together: all elbows come from the same table, all hose is pulled out as much.
 * The order is fixed, so that one set of random deviates serves every network of a job.
 */
export const DOUBT_KINDS = [
  'pipe-roughness',
  'hose-roughness',
  'entry',
  'elbow',
  'hose-bend',
  'branch-entry',
  'gate',
  'reducer',
  'inlet',
  'fitting',
  'exit',
  'cyclone',
  'filters',
  'fixed-resistance',
] as const;
/** One of the groups that err together. */
export type DoubtKind = (typeof DOUBT_KINDS)[number];

/** How surely a loss is known: elements that share `kind` share half of the variance, the other half is their own. */
export type LossDoubt = {
  kind: DoubtKind;
  /** one standard deviation of ln(k) or ln(pressure) [-]; for the friction law, of ln(roughness) */
  sd: number;
};

/** One closed-form loss of total pressure at flow Q [m3/s], rising with Q. */
export type LossTerm = { doubt: LossDoubt } & (
  | { law: 'friction'; length_m: number; diameter_m: number; roughness_m: number }
  /** k · ρ/2 · (Q/area)² */
  | { law: 'velocity-pressure'; k: number; area_m2: number }
  /** pressure · (Q/flow)^exponent, as measured; already corrected to the air at hand */
  | { law: 'power'; flow_m3_s: number; pressure_Pa: number; exponent: number }
);

/** Filters new, or as full as they are allowed to get. */
export type FilterState = 'clean' | 'loaded';

/** What an element's loss depends on besides the flow. */
export type LossContext = { air: Air; filterState: FilterState };

/** Where a loss is booked in the pressure budget. */
export type LossPart = 'hood' | 'hose' | 'pipe' | 'bends' | 'cyclone' | 'filters' | 'other' | 'way-out';

/** Something wrong with one element: a code, the field it stands in, and a sentence that says how to mend it. */
export type ElementFault = { code: IssueCode; field: string; message: string };

/** Something worth knowing about one element that does not stop an answer. */
export type ElementRemark = { code: string; field: string; text: string };

/** One kind of duct element: its fields, its losses, where they come from. Adding a kind is one such record in one file. */
export type ElementKind<S extends z.ZodType = z.ZodType> = {
  kind: string;
  label: string;
  fields: S;
  losses(element: z.infer<S>, context: LossContext): LossTerm[];
  /** where its loss is booked in the pressure budget */
  part(element: z.infer<S>): LossPart;
  /** what makes this element impossible, in sentences; `losses` may be called only when there is nothing */
  faults?(element: z.infer<S>): ElementFault[];
  /** what was assumed */
  remarks?(element: z.infer<S>): ElementRemark[];
  /** true when dust stays behind here: what follows carries clean air */
  catchesDust?: boolean;
  source: string;
};

/** Default doubt of a coefficient that somebody gave: one standard deviation [-]. */
export const GIVEN_K_DOUBT = 0.1;
/** Default doubt of a roughness that somebody gave [-]. */
export const GIVEN_ROUGHNESS_DOUBT = 0.3;
/** Default doubt of a measured or rated resistance [-]. */
export const MEASURED_DOUBT = 0.1;

/** Cross-section of a round duct [m2]. */
export const circleArea_m2 = (diameter_m: number): number => (Math.PI / 4) * diameter_m * diameter_m;
