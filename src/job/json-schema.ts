import { z } from 'zod';
import { Job } from './schema.ts';

type Meta = { label?: string; help?: string; quantity?: string };

/** Our own field notes become the words JSON Schema has for them; the unit stands in each field's name. */
function inJsonSchemaWords({ jsonSchema }: { jsonSchema: z.core.JSONSchema.BaseSchema }): void {
  const { label, help } = jsonSchema as Meta;
  if (label) jsonSchema.title = label;
  if (help) jsonSchema.description = help;
  for (const key of ['label', 'help', 'quantity']) delete jsonSchema[key];
}

/** JSON Schema (draft 2020-12) of the job document, as the zod schema has it. */
export function jobJsonSchema(): z.core.JSONSchema.BaseSchema {
  return z.toJSONSchema(Job, { io: 'input', override: inJsonSchemaWords });
}
