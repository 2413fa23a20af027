import { z } from 'zod';

type Step = string | number;

/** Takes `optional`, `nullable` and their like off a schema. */
const bare = (schema: z.core.$ZodType): z.core.$ZodType => {
  const def = schema._zod.def as { innerType?: z.core.$ZodType };
  return def.innerType ? bare(def.innerType) : schema;
};

/** What stands at `step` inside `value`, own properties only. */
const inside = (value: unknown, step: Step): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, step)
    ? (value as Record<Step, unknown>)[step]
    : undefined;

/** The value at `path` inside a document as it was sent; undefined where there is none. */
export const valueAt = (value: unknown, path: readonly Step[]): unknown => path.reduce<unknown>(inside, value);

/** The branch of a discriminated union that `value` has chosen by its discriminator. */
function chosenOption(union: z.core.$ZodDiscriminatedUnion, value: unknown): z.core.$ZodType | undefined {
  const { discriminator, options } = union._zod.def;
  const chosen = inside(value, discriminator);
  return options.find((option) => option._zod.propValues?.[discriminator]?.has(chosen as never));
}

function stepInto(schema: z.core.$ZodType, value: unknown, step: Step): z.core.$ZodType | undefined {
  const here = bare(schema);
  if (here instanceof z.core.$ZodDiscriminatedUnion) {
    const option = chosenOption(here, value);
    return option && stepInto(option, value, step);
  }
  if (here instanceof z.core.$ZodObject) {
    return Object.hasOwn(here._zod.def.shape, step) ? here._zod.def.shape[step] : undefined;
  }
  if (here instanceof z.core.$ZodArray) return here._zod.def.element;
  if (here instanceof z.core.$ZodTuple) return here._zod.def.items[Number(step)];
  if (here instanceof z.core.$ZodRecord) return here._zod.def.valueType;
  return undefined;
}

/** Schema of the field at `path`, as far as the document's own discriminators decide it; wrappers taken off. */
export function fieldAt(schema: z.core.$ZodType, value: unknown, path: readonly Step[]): z.core.$ZodType | undefined {
  let here: z.core.$ZodType | undefined = schema;
  let at = value;
  for (const step of path) {
    here = here && stepInto(here, at, step);
    at = inside(at, step);
  }
  const found = here && bare(here);
  return found instanceof z.core.$ZodDiscriminatedUnion ? (chosenOption(found, at) ?? found) : found;
}

/** Names of the fields an object may have; empty for anything that is not an object. */
export const fieldNames = (schema: z.core.$ZodType | undefined): string[] =>
  schema instanceof z.core.$ZodObject ? Object.keys(schema._zod.def.shape) : [];
