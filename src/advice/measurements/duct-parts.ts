import { DOUBT_KINDS, elementKind, type DoubtKind } from '../../duct/index.ts';
import type { Element } from '../../duct/index.ts';
import type { Measurement, MeasurementMaker } from '../measurement.ts';

/** Parts of the ducts whose loss a second water tube shows, and what to say. */
const PARTS: readonly {
  kind: DoubtKind;
  is: (e: Element) => boolean;
  measurement: string;
  text: string;
  field: string;
}[] = [
  {
    kind: 'filters',
    is: (e) => e.kind === 'filters',
    measurement: 'filter-pressure',
    text: 'Blow a known flow through one filter and read the water tube before and behind it; write down both.',
    field: 'each',
  },
  {
    kind: 'cyclone',
    is: (e) => e.kind === 'cyclone',
    measurement: 'cyclone-pressure',
    text: 'Read the water tube before and behind the drum at a known flow, say with a holed cap on its inlet pipe.',
    field: 'k',
  },
  {
    kind: 'hose-roughness',
    is: (e) => e.kind === 'pipe' && (e.surface === 'flexible-hose' || e.surface === 'aluminium-flex'),
    measurement: 'hose-pressure',
    text: 'Read the water tube at both ends of two metres of this hose, hung straight, at a known flow.',
    field: 'roughness_m',
  },
];

/** How well two tubes and a known flow show the loss of a part, relative. Estimated. */
const TWO_TUBES_SD = 0.06;
/** A pipe's loss changes by about this share of a change of its roughness, in ln. Source: Colebrook, fully rough, D/k 30–100. */
const ROUGHNESS_LEVERAGE = 0.35;

/**
 * Measuring the part of the ducts that is most in doubt. What the reading tells of the error that parts of one kind share is blurred
 * by the error this one piece has of its own: half the variance each.
 */
export const ductParts: MeasurementMaker = ({ job, ductDraws, judged }) =>
  PARTS.flatMap(({ kind, is, measurement, text, field }): Measurement[] => {
    const section = job.ductwork.sections.findIndex((s) => s.elements.some(is));
    if (section < 0) return [];
    const at = job.ductwork.sections[section]!.elements.findIndex(is);
    const element = job.ductwork.sections[section]!.elements[at]!;
    const situation = { air: judged.candidate.air, filterState: 'clean' } as const;
    const doubt = elementKind(element.kind).losses(element, situation)[0]?.doubt.sd ?? 0;
    if (!(doubt > 0)) return [];
    const seen = element.kind === 'pipe' ? TWO_TUBES_SD / ROUGHNESS_LEVERAGE : TWO_TUBES_SD;
    const column = DOUBT_KINDS.indexOf(kind);
    return [
      {
        measurement,
        text,
        values: {},
        detail: { path: `/ductwork/sections/${section}/elements/${at}/${field}` },
        readings: [
          {
            values: Float64Array.from(ductDraws.kinds, (z) => z[column]!),
            sd: Math.hypot(1, seen / (doubt * Math.SQRT1_2)),
          },
        ],
        showsCurveAt_m3_s: null,
      },
    ];
  });
