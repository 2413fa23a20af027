import type { z } from 'zod';
import type { Air } from '../../air/air.ts';

/** How surely a loss is known: elements that share `kind` share half of the variance, the other half is their own. */
export type LossDoubt = {
  /** group of elements that err together, e.g. `elbow`, `hose-roughness`, `filters` */
  kind: string;
  /** relative standard deviation of the pressure loss [-] */
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

export type FilterState = 'clean' | 'loaded';

export type LossContext = { air: Air; filterState: FilterState };

/** One kind of duct element: its fields, its losses, where they come from. Adding a kind is one such record in one file. */
export type ElementKind<S extends z.ZodType = z.ZodType> = {
  kind: string;
  label: string;
  fields: S;
  losses(element: z.infer<S>, context: LossContext): LossTerm[];
  /** true when dust stays behind here: what follows carries clean air */
  catchesDust?: boolean;
  source: string;
};
