import { at, set, type ChangeMaker } from '../change.ts';
import type { PatchOperation } from '../../assessment.ts';

const MORE = [1.34, 1.67, 2];

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
    return MORE.flatMap((factor) => {
      let [before, after] = [0, 0];
      const patch: PatchOperation[] = [];
      for (const { e, path } of places) {
        if (e.kind !== 'filters') continue;
        const to = Math.ceil(e.count * factor);
        before += e.count;
        after += to;
        patch.push(set(path, to));
      }
      return patch.length > 0 ? [{ what: `Put ${after} filters side by side instead of ${before}`, patch }] : [];
    });
  },
};
