import { z } from 'zod';

/**
 * What a field of the job means to a person: its quantity (a key of the unit table), its label and a hint.
 * Written once beside the range; the JSON Schema, the form row and the docs read it from here.
 */
export type FieldMeta = {
  /** Physical quantity, a key of the unit table in `src/units`; left out for plain numbers. */
  quantity?: string;
  label: string;
  help?: string;
};

/** A number that must be above zero: a length, an area, a speed. A zero is understood but impossible. */
export const positive = (label: string, quantity?: string, help?: string) =>
  z.number().gt(0).lte(1e9).meta({ label, quantity, help });

/** A number that may be zero but not below. */
export const nonNegative = (label: string, quantity?: string, help?: string) =>
  z.number().gte(0).lte(1e9).meta({ label, quantity, help });

/** A fraction of one, ends included. */
export const fraction = (label: string, help?: string) =>
  z.number().gte(0).lte(1).meta({ label, quantity: 'fraction', help });

/** A number inside a stated range, ends included. */
export const between = (min: number, max: number, label: string, quantity?: string, help?: string) =>
  z.number().gte(min).lte(max).meta({ label, quantity, help });

/** One of a list of names. */
export const oneOf = <const T extends readonly [string, ...string[]]>(names: T, label: string, help?: string) =>
  z.enum(names).meta({ label, help });

/** Relative standard deviation somebody puts on a value they typed; overrides the program's default doubt. */
export const doubt = () =>
  z.number().gte(0).lte(2).nullish().meta({ label: 'doubt', help: 'one standard deviation, as a fraction' });
