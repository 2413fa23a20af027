import type { Element } from '../../src/duct/index.ts';
import type { Quantity } from '../../src/units/index.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { KINDS, nameLabel } from './fields.ts';

type Say = (quantity: Quantity, si: number, unit?: string) => string;

const word = (path: string, name: string, texts: DuctTexts): string => texts.nameWords[name] ?? nameLabel(path, name);

/** A kind of element as people call it. */
export const kindName = (kind: Element['kind'], texts: DuctTexts): string =>
  texts.kindWords[kind] ?? KINDS.find((row) => row.kind === kind)?.label ?? kind;

/** One element in one line: what it is, and the one figure that matters. */
export function elementLine(element: Element, texts: DuctTexts, say: Say): { name: string; figure: string } {
  const times = (count: number | null | undefined) => (count == null || count === 1 ? '' : `× ${count}`);
  switch (element.kind) {
    case 'pipe':
      return {
        name: element.surface ? word('surface', element.surface, texts) : kindName('pipe', texts),
        figure: say('length', element.length_m, 'm'),
      };
    case 'fitting':
      return { name: word('fitting', element.fitting, texts), figure: times(element.count) };
    case 'entry':
      return {
        name: element.entry ? word('entry', element.entry, texts) : kindName('entry', texts),
        figure: times(element.count),
      };
    case 'filters':
      return { name: kindName('filters', texts), figure: `× ${element.count}` };
    case 'branch-entry':
      return {
        name: kindName('branch-entry', texts),
        figure: element.angle_deg == null ? '' : say('angle', element.angle_deg),
      };
    case 'cyclone':
      return {
        name: kindName('cyclone', texts),
        figure: element.bodyDiameter_m == null ? '' : say('length', element.bodyDiameter_m),
      };
    case 'reducer':
      return {
        name: kindName('reducer', texts),
        figure: `${say('length', element.fromDiameter_m)} → ${say('length', element.toDiameter_m)}`,
      };
    case 'fixed-resistance':
      return { name: kindName('fixed-resistance', texts), figure: say('pressure', element.pressure_Pa) };
    default:
      return { name: kindName(element.kind, texts), figure: say('length', element.diameter_m) };
  }
}
