import { at, set, type ChangeMaker } from '../change.ts';
import type { PatchOperation } from '../../assessment.ts';

/** How many side by side in place of n: one more, then half as many again, twice, three times as many. */
const MORE: readonly ((n: number) => number)[] = [
  (n) => n + 1,
  (n) => Math.ceil(1.5 * n),
  (n) => 2 * n,
  (n) => (n <= 4 ? 3 : 2) * n,
];

/** More filters side by side: each gets less air, and all lose less. */
export const moreFilters: ChangeMaker = {
  kind: 'filters',
  propose({ job }) {
    const places = [
      ...job.ductwork.sections.flatMap((s, i) =>
        s.elements.map((e, j) => ({ e, path: at('ductwork', 'sections', i, 'elements', j, 'count') })),
      ),
      ...(job.ductwork.discharge ?? []).map((e, j) => ({ e, path: at('ductwork', 'discharge', j, 'count') })),
    ];
    const seen = new Set<number>();
    return MORE.flatMap((more) => {
      let [before, after] = [0, 0];
      const patch: PatchOperation[] = [];
      for (const { e, path } of places) {
        if (e.kind !== 'filters') continue;
        const to = more(e.count);
        before += e.count;
        after += to;
        patch.push(set(path, to));
      }
      const isNew = !seen.has(after);
      seen.add(after);
      return patch.length > 0 && isNew
        ? [{ what: `Put ${after} filters side by side instead of ${before}`, values: { before, after }, patch }]
        : [];
    });
  },
};
