import { MATERIALS } from './materials.ts';
import { SURFACES } from '../pipe/index.ts';
import { ELEMENT_KINDS } from './elements/index.ts';
import { ENTRIES, ENTRY_NAMES, FITTINGS, FITTING_NAMES, entryCoefficient, fittingRecord } from './tables/index.ts';

/** The pipe that a coefficient is quoted for where it depends on size: the commonest branch [m]. */
const QUOTED_AT = { diameter_m: 0.1, radiusRatio: 1.5 };

const row = (...cells: (string | number)[]): string => `| ${cells.join(' | ')} |`;
const table = (heads: string[], rows: string[]): string =>
  [row(...heads), row(...heads.map(() => '---')), ...rows].join('\n');
const percent = (share: number): string => `${Math.round(100 * share)} %`;
const code = (name: string): string => `\`${name}\``;

/**
 * The pieces a duct can be made of as a page of Markdown: every kind with its fields, every named entry, fitting, surface
 * and material with its figure, its doubt (one standard deviation) and its source. Made from the tables alone.
 */
export function ductHandbook(): string {
  const kinds = ELEMENT_KINDS.map(({ kind, label, fields, source }) => {
    const names = Object.keys(fields.shape).filter((name) => name !== 'kind');
    return row(code(kind), label, names.map(code).join(', '), source);
  });
  const entries = ENTRY_NAMES.map((name) => {
    const { k, doubt, source } = entryCoefficient(name)!;
    return row(code(name), ENTRIES[name].label, k, percent(doubt), source);
  });
  const fittings = FITTING_NAMES.map((name) => {
    const { k, doubt, source } = fittingRecord(name)!.coefficient(QUOTED_AT);
    return row(code(name), FITTINGS[name].label, Number(k.toPrecision(3)), percent(doubt), source);
  });
  const surfaces = Object.entries(SURFACES).map(([name, { label, roughness_m, doubt, source }]) =>
    row(code(name), label, Number((roughness_m * 1000).toPrecision(3)), percent(doubt), source),
  );
  const materials = Object.entries(MATERIALS).map(([name, { label, minimumVelocity_m_s, source }]) =>
    row(code(name), label, minimumVelocity_m_s, source),
  );
  return [
    '# Pieces of a duct',
    'Made from the tables of the program (`src/duct`, `src/pipe`); `npx vitest -u tests/unit/duct/handbook.test.ts --config tests/vitest.config.ts` writes it anew. k is the loss over the velocity pressure; the doubt is one standard deviation. A value of your own always wins.',
    '## Kinds',
    table(['kind', 'is', 'fields', 'source'], kinds),
    '## Entries',
    table(['entry', 'is', 'k', 'doubt', 'source'], entries),
    '## Fittings',
    'On 100 mm pipe, bends with a radius of 1.5 diameters.',
    table(['fitting', 'is', 'k', 'doubt', 'source'], fittings),
    '## Surfaces',
    table(['surface', 'is', 'roughness [mm]', 'doubt', 'source'], surfaces),
    '## Materials',
    table(['material', 'is', 'slowest air [m/s]', 'source'], materials),
    '',
  ].join('\n\n');
}
