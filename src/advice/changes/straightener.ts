import { at, set, type ChangeMaker } from '../change.ts';

const AT_THE_INLET = new Set(['inlet-swirl', 'inlet-elbow']);

/** A straight piece with vanes in front of the blower's eye, in place of swirl or an elbow right at it. */
export const straightener: ChangeMaker = {
  kind: 'straightener',
  propose({ job }) {
    const found = job.ductwork.sections.flatMap((s, i) =>
      s.elements.flatMap((e, j) => (e.kind === 'fitting' && AT_THE_INLET.has(e.fitting) ? [{ i, j }] : [])),
    );
    if (found.length === 0) return [];
    // the piece stays in the list without a loss, so that the places of the others still hold
    const patch = found.map(({ i, j }) => set(at('ductwork', 'sections', i, 'elements', j, 'k'), 0));
    return [
      {
        values: {},
        what: "Straighten the air before the blower's eye: crossed sheets in the pipe against the swirl, three wheel diameters without an elbow",
        patch,
      },
    ];
  },
};
