import { gatePlans } from '../../operate/plans.ts';
import { at, set, type ChangeMaker } from '../change.ts';

/** Leak of a closed home-made gate with a felt or foam seal [m2]: a tenth of a millimetre around a 100 mm blade. Estimated. */
const SEALED_LEAK_m2 = 5e-6;
const NEW_GATE_LEAK_m2 = 2e-5;

/** Seals on the closed gates. */
export const sealGates: ChangeMaker = {
  kind: 'seal-gates',
  propose({ job }) {
    const leaky = job.ductwork.sections.flatMap((s, i) =>
      (s.gate?.closedLeakArea_m2 ?? 0) > 2 * SEALED_LEAK_m2 ? [i] : [],
    );
    if (leaky.length === 0) return [];
    return [
      {
        what: 'Seal the closed gates with felt or foam, so that no air leaks past them',
        values: {},
        patch: leaky.map((i) => set(at('ductwork', 'sections', i, 'gate', 'closedLeakArea_m2'), SEALED_LEAK_m2)),
      },
    ];
  },
};

/** Gates for machines that have none and draw air all the time. */
export const addGate: ChangeMaker = {
  kind: 'add-gate',
  propose({ job }) {
    const open = job.ductwork.sections.flatMap((s, i) => (s.pickup && !s.gate ? [i] : []));
    if (open.length === 0 || job.ductwork.sections.filter((s) => s.pickup).length < 2) return [];
    const names = open.map((i) => job.ductwork.sections[i]!.pickup?.machine ?? job.ductwork.sections[i]!.id);
    return [
      {
        what: `Give ${names.length > 3 ? `the ${names.length} open branches a gate each` : `${names.join(', ')} a gate`}, and shut it when the machine stands`,
        values: { machines: names.join(', ') },
        patch: open.map((i) => set(at('ductwork', 'sections', i, 'gate'), { closedLeakArea_m2: NEW_GATE_LEAK_m2 })),
      },
    ];
  },
};

/** One more gate open where dust would settle in a trunk: more air keeps it moving. */
export const openGate: ChangeMaker = {
  kind: 'open-gate',
  propose({ job, slow, judged }) {
    if (slow.size === 0) return [];
    const { plans } = gatePlans(job);
    const pickups = job.ductwork.sections.filter((s) => s.pickup && s.gate);
    const failing = new Set(
      judged.cases
        .filter(
          (c) => c.result.required && c.result.reasons.some((r) => r.code === 'velocity-low' && r.severity !== 'note'),
        )
        .map((c) => c.result.gatePlan),
    );
    const written = plans.map((p) => ({
      name: p.name,
      open: pickups.filter((s) => p.open.has(s.id)).map((s) => s.id),
      required: p.required,
    }));
    return pickups.map((extra) => ({
      what: `Leave the gate of the ${extra.pickup?.machine ?? extra.id} open as well, so that the main carries enough air`,
      values: { machine: extra.pickup?.machine ?? extra.id },
      patch: [
        set(
          '/gatePlans',
          written.map((p) =>
            failing.has(p.name) && !p.open.includes(extra.id) ? { ...p, open: [...p.open, extra.id] } : p,
          ),
        ),
      ],
    }));
  },
};
