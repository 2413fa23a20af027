import type { PatchOperation } from '../../assessment.ts';
import type { Element } from '../../duct/index.ts';
import { formatQuantity } from '../../units/format.ts';
import { at, set, type ChangeMaker, type ChangeSituation } from '../change.ts';

/**
 * Inside diameters of round pipe as sold [m]: small plastic pipe for vacuum cleaners, sheet-metal duct from 63 mm on.
 * Source: EN 1506 series with the sizes common in between (from memory); plastic pipe, common practice.
 */
const SIZES_SOLD_m = [
  0.026, 0.032, 0.036, 0.04, 0.045, 0.05, 0.056, 0.063, 0.071, 0.08, 0.09, 0.1, 0.112, 0.125, 0.14, 0.15, 0.16, 0.18,
  0.2, 0.224, 0.25, 0.28, 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8, 0.9, 1,
];

/** Sizes above or below a diameter, nearest first. */
const sizesFrom = (d: number, direction: 1 | -1): number[] =>
  direction > 0 ? SIZES_SOLD_m.filter((s) => s > d * 1.03) : SIZES_SOLD_m.filter((s) => s < d * 0.97).reverse();

/** The diameter most of a run's pipe has; null without pipe. */
function runDiameter(elements: readonly Element[]): number | null {
  const lengths = new Map<number, number>();
  for (const e of elements)
    if (e.kind === 'pipe') lengths.set(e.diameter_m, (lengths.get(e.diameter_m) ?? 0) + e.length_m);
  return [...lengths].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

/** Sets every round piece of a run that has its diameter to another; what has another size (a machine's port) stays. */
function resized(elements: readonly Element[], section: number, from: number, to: number): PatchOperation[] {
  return elements.flatMap((e, j) =>
    'diameter_m' in e && Math.abs(e.diameter_m - from) < 1e-6 && e.kind !== 'entry'
      ? [set(at('ductwork', 'sections', section, 'elements', j, 'diameter_m'), to)]
      : [],
  );
}

/** One run a size or two over, then all of them together further and further. */
function proposals({ job }: ChangeSituation, places: readonly number[], direction: 1 | -1) {
  const runs = places.flatMap((i) => {
    const section = job.ductwork.sections[i]!;
    const from = runDiameter(section.elements);
    return from === null ? [] : [{ i, section, from, sizes: sizesFrom(from, direction) }];
  });
  const single = runs.flatMap(({ i, section, from, sizes }) =>
    sizes.slice(0, STEPS_ALONE).map((to) => ({
      what: `Build ${section.label ?? section.id} in ${formatQuantity(to, 'mm')} instead of ${formatQuantity(from, 'mm')}`,
      values: { pipes: sized(section, to) },
      patch: resized(section.elements, i, from, to),
    })),
  );
  if (runs.length < 2) return single;
  const together = Array.from({ length: MOST_STEPS }, (_, step) => {
    const moved = runs.filter(({ sizes }) => sizes.length > step);
    const names = moved.map(
      ({ section, sizes }) => `${section.label ?? section.id} in ${formatQuantity(sizes[step]!, 'mm')}`,
    );
    return {
      what: `Build ${names.join(', ')}`,
      values: { pipes: moved.map(({ section, sizes }) => sized(section, sizes[step]!)).join(', ') },
      patch: moved.flatMap(({ i, section, from, sizes }) => resized(section.elements, i, from, sizes[step]!)),
    };
  });
  return [...single, ...together].filter(({ patch }) => patch.length > 0);
}

/** "main 315 mm" */
const sized = ({ label, id }: { label?: string | null; id: string }, diameter_m: number): string =>
  `${label ?? id} ${formatQuantity(diameter_m, 'mm')}`;

const STEPS_ALONE = 2;
const MOST_STEPS = 5;
const MOST_PLACES = 8;
const few = (places: ReadonlySet<number>): number[] => [...places].slice(0, MOST_PLACES);

/** A wider branch or main where too little air comes through. */
export const widerPipe: ChangeMaker = { kind: 'wider-pipe', propose: (s) => proposals(s, few(s.short), 1) };

/** A narrower branch or main where the air is too slow to carry dust. */
export const narrowerPipe: ChangeMaker = { kind: 'narrower-pipe', propose: (s) => proposals(s, few(s.slow), -1) };
