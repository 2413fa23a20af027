import { formatQuantity } from '../../units/format.ts';
import { at, set, type ChangeMaker, type ChangeSituation } from '../change.ts';
import type { PatchOperation } from '../../assessment.ts';

/** A hose is seldom needed longer than this to follow a machine [m]. Common practice, no source. */
const LEAST_HOSE_m = 0.5;
const SHORTER = [0.6, 0.3];

type Hose = { section: number; element: number; length_m: number };

/** Ribbed hoses on the ways that fall short. */
function hoses({ job, short }: ChangeSituation): Hose[] {
  return job.ductwork.sections.flatMap((s, section) =>
    short.has(section)
      ? s.elements.flatMap((e, element) =>
          e.kind === 'pipe' && (e.surface === 'flexible-hose' || e.surface === 'aluminium-flex') && e.length_m > 0
            ? [{ section, element, length_m: e.length_m }]
            : [],
        )
      : [],
  );
}

const field = (h: Hose, name: string) => at('ductwork', 'sections', h.section, 'elements', h.element, name);

/** Shorter hoses: ribs cost several times what a smooth pipe costs. */
export const shorterHose: ChangeMaker = {
  kind: 'shorter-hose',
  propose(situation) {
    const found = hoses(situation);
    return SHORTER.flatMap((share) => {
      const shortened = found
        .map((h) => ({ h, to: Math.round(Math.max(LEAST_HOSE_m, share * h.length_m) * 10) / 10 }))
        .filter(({ h, to }) => to < h.length_m - 0.05);
      if (shortened.length === 0) return [];
      const saved = shortened.reduce((sum, { h, to }) => sum + h.length_m - to, 0);
      const where = shortened.length === 1 ? 'the hose' : `the ${shortened.length} hoses`;
      return [
        {
          what: `Cut ${where} by ${formatQuantity(saved, 'm')} in all, the rest hung without a sag`,
          values: { saved_m: saved },
          patch: shortened.map(({ h, to }) => set(field(h, 'length_m'), to)),
        },
      ];
    });
  },
};

/** Smooth-bore hose in place of ribbed hose. */
export const smoothHose: ChangeMaker = {
  kind: 'smooth-hose',
  propose(situation) {
    const found = hoses(situation);
    if (found.length === 0) return [];
    const patch: PatchOperation[] = found.flatMap((h) => [
      set(field(h, 'surface'), 'smooth-bore-hose'),
      set(field(h, 'roughness_m'), null),
    ]);
    return [
      {
        what:
          found.length === 1
            ? 'Put smooth-bore hose in place of the ribbed one'
            : 'Put smooth-bore hose in place of the ribbed ones',
        values: {},
        patch,
      },
    ];
  },
};
