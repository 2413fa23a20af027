import type { Quantity } from '../../../src/units/index.ts';

/** Texts people type into a field, and what they mean in base units, worked out by hand from the definitions of the units. */
export type Typed = { quantity: Quantity; bare: string; typed: readonly (readonly [text: string, base: number])[] };
