import { gatePlans } from '../../operate/plans.ts';
import { formatQuantity } from '../../units/format.ts';
import { set, type ChangeMaker } from '../change.ts';

/** Diameters of the stub that lets room air in, as a share of the main it stands on. */
const SHARES = [0.3, 0.4, 0.5];

/** A stub with a slide at the start of a slow main, always a little open: room air helps to keep the dust moving. */
export const bleedValve: ChangeMaker = {
  kind: 'bleed-valve',
  propose({ job, slow }) {
    const { sections } = job.ductwork;
    const trunks = [...slow].filter((i) => sections[i]!.pickup == null);
    const taken = new Set(sections.map((s) => s.id));
    if (trunks.length === 0 || taken.has('bleed-valve')) return [];
    const main = sections[trunks[0]!]!;
    const pipe = main.elements.find((e) => e.kind === 'pipe');
    if (pipe?.kind !== 'pipe') return [];
    // written out, or a list of plans made from the pick-ups would take the stub for a machine
    const plans = gatePlans(job).plans.map((p) => ({
      name: p.name,
      open: sections.filter((s) => s.gate && p.open.has(s.id)).map((s) => s.id),
      required: p.required,
    }));
    return SHARES.map((share) => {
      const diameter_m = Math.round(share * pipe.diameter_m * 1000) / 1000;
      return {
        what: `Let room air into the start of ${main.label ?? main.id} through an open stub of ${formatQuantity(diameter_m, 'mm')}, so that the dust keeps moving`,
        values: { section: main.label ?? main.id, diameter_m },
        patch: [
          set('/ductwork/sections/-', {
            id: 'bleed-valve',
            into: main.id,
            pickup: { machine: 'bleed valve', minimumVelocity_m_s: 0 },
            elements: [{ kind: 'entry', entry: 'plain', diameter_m }],
          }),
          set('/gatePlans', plans),
        ],
      };
    });
  },
};
