import type { Element } from './elements/index.ts';
import type { Material } from './materials.ts';

/** A machine at the start of a section. The job's own type fits; so does any subset of it. */
export type Pickup = {
  machine?: string | null;
  requiredFlow_m3_s?: number | null;
  minimumVelocity_m_s?: number | null;
  material?: Material | null;
};

/** One run of duct between two junctions; flows `into` another section or `"blower"`. */
export type Section = {
  id: string;
  into: string;
  minimumVelocity_m_s?: number | null;
  pickup?: Pickup | null;
  gate?: { closedLeakArea_m2?: number | null } | null;
  /** in flow direction */
  elements: readonly Element[];
};

/** The tree of sections and the run behind the blower, as the job document has them. */
export type Ductwork = {
  sections: readonly Section[];
  discharge?: readonly Element[] | null;
};

/** What a section may flow into when it is the last. */
export const BLOWER = 'blower';
