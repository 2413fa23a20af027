import { bracketedRoot } from '../../numeric/root.ts';
import { pointer } from '../../issues/result.ts';
import type { Bench } from '../bench.ts';
import { fanPressure, pipeFriction, signal, tapReading } from '../pressures.ts';
import type { Rig, Row } from '../schema.ts';
import type { Method } from './method.ts';

/** Contraction of the jet through a sharp-edged hole with a large room before it [-]. Source: ISO 5801 inlet orifice (recalled), 0.60 ± 0.02. */
export const CONTRACTION = 0.6;
/** Largest hole, as a share of the pipe's diameter, for which the formulas hold [-]. */
export const LARGEST_RATIO = 0.9;
/** From this share on the cap counts as off: nobody cuts such a hole, but people measure a pipe twice. */
const OPEN_RATIO = 0.99;

/** Where a tap counts as near or far, in diameters behind the cap. Source: the job document's definition, with room for a tape. */
const NEAR_AT_MOST = 1;
const FAR_AT_LEAST = 5;
const TAP_ASSUMED =
  'It is not said where the tap is. It is taken as far from the cap, next to the blower; were it close behind the cap, the flow would be over-stated by 16–31 %.';

const holeArea = (row: Row): number => (Math.PI / 4) * row.orificeDiameter_m! ** 2;

/** True where the cap is off. Judged by the diameters as given, so that trying out an error does not put the cap back on. */
export const isOpenEnd = (rig: Rig, row: Row): boolean => row.orificeDiameter_m! >= OPEN_RATIO * rig.pipeDiameter_m!;

/**
 * Contraction of the jet out of a pipe through a hole in its cap [-]: as a sharp-edged contraction rises with the diameter ratio,
 * set to 0.60 for a small hole. λ = 1 + 0.622·(1 − 0.215·β² − 0.785·β⁵), Cc ∝ 1/λ.
 * Source: Rennels & Hudson, Pipe Flow (2012), sharp-edged contraction (read in a library's documentation).
 */
export function outletContraction(diameterRatio: number): number {
  const jet = 1 + 0.622 * (1 - 0.215 * diameterRatio ** 2 - 0.785 * diameterRatio ** 5);
  return (CONTRACTION * 1.622) / jet;
}

const ROUNDS = 60;

/**
 * Flow at which the reading is explained, all of it: losses go with Q², friction a little less. Friction's share is small and nearly
 * constant, so putting it in again and again settles in a few rounds; where it does not, the flow is bracketed.
 */
function flowExplaining(bench: Bench, perFlowSquared: number, reading_Pa: number): number {
  const most = Math.sqrt(reading_Pa / perFlowSquared);
  if (most === 0 || bench.endToTap_m === 0) return most;
  let flow = most;
  for (let round = 0; round < ROUNDS; round++) {
    const friction = pipeFriction(bench, bench.endToTap_m, flow);
    const next = Math.sqrt(reading_Pa / (perFlowSquared + friction / flow ** 2));
    if (Math.abs(next - flow) <= 1e-14 * next) return next;
    flow = next;
  }
  const excess = (q: number) => perFlowSquared * q * q + pipeFriction(bench, bench.endToTap_m, q) - reading_Pa;
  return bracketedRoot(excess, 0, most, 1e-13 * most);
}

function inletFlow(bench: Bench, row: Row): number {
  const halfDensity = bench.air.density_kg_m3 / 2;
  const perArea = 1 / bench.pipe.area_m2;
  const reading = signal(row.staticPressure_Pa);
  if (isOpenEnd(bench.rig, row))
    return flowExplaining(bench, halfDensity * perArea ** 2 * (1 + bench.openEndLoss), reading);
  const perJet = 1 / (CONTRACTION * holeArea(row));
  if (bench.tap === 'near') return Math.sqrt(reading / halfDensity) / perJet;
  return flowExplaining(bench, halfDensity * ((perJet - perArea) ** 2 + perArea ** 2), reading);
}

function outletFlow(bench: Bench, row: Row): number {
  const jetArea = outletContraction(row.orificeDiameter_m! / bench.pipe.diameter_m) * holeArea(row);
  const perFlowSquared = (bench.air.density_kg_m3 / 2) * (jetArea ** -2 - bench.pipe.area_m2 ** -2);
  return Math.sqrt(signal(row.staticPressure_Pa) / perFlowSquared);
}

/**
 * Sharp-edged hole in a cap on the free end of the test pipe; the pressure at the tap is both signal and pressure.
 * Formulas as the job document defines them: jet, sudden enlargement (Borda–Carnot), velocity pressure, friction.
 */
export const orificeCap: Method = {
  method: 'orifice-cap',
  label: 'holes in a cap',
  standard: 'inlet orifice after ISO 5801, tap after the pressure has recovered',
  source:
    'Borda–Carnot enlargement behind a jet of 0.60 of the hole; plain pipe end 0.93 velocity pressures (ventilation handbooks)',
  help: 'Cut a sharp-edged round hole in a cap on the free end of the pipe. No hole is shut-off; cap off is the largest flow. Read both legs of the tube.',
  rigFields: ['side', 'pipeDiameter_m', 'tap', 'lengthToTap_m', 'lengthTapToBlower_m', 'surface'],
  rowFields: ['orificeDiameter_m'],
  rigNeeds: [['pipeDiameter_m']],

  flow(bench, row) {
    if (row.orificeDiameter_m === 0) return 0;
    return bench.flowFactor * (bench.side === 'inlet' ? inletFlow(bench, row) : outletFlow(bench, row));
  },

  pressure(bench, row, flow_m3_s) {
    const nearAndCapped =
      bench.side === 'inlet' && bench.tap === 'near' && row.orificeDiameter_m! > 0 && !isOpenEnd(bench.rig, row);
    if (!nearAndCapped) return fanPressure(bench, row, flow_m3_s);
    const jet_m_s = Math.sqrt(signal(tapReading(bench, row)) / (bench.air.density_kg_m3 / 2));
    const enlargement = (bench.air.density_kg_m3 / 2) * (jet_m_s - flow_m3_s / bench.pipe.area_m2) ** 2;
    return enlargement + pipeFriction(bench, bench.tapToBlower_m, flow_m3_s);
  },

  useless(bench, row) {
    if (bench.side !== 'outlet' || !isOpenEnd(bench.rig, row)) return null;
    return 'With the cap off on the outlet side the tap shows no flow. Put a cap with a hole on, or leave this row out.';
  },

  impossible(rig, row, path) {
    const hole = row.orificeDiameter_m;
    const pipe = rig.pipeDiameter_m;
    if (hole == null || pipe == null) return [];
    const at = path + pointer('orificeDiameter_m');
    if (hole > pipe) {
      return [
        {
          code: 'contradiction',
          path: at,
          message: `A hole of ${hole} m does not fit into a pipe of ${pipe} m: look at both diameters.`,
        },
      ];
    }
    if (hole > LARGEST_RATIO * pipe * (1 + 1e-9) && hole < OPEN_RATIO * pipe) {
      const largest = Number((LARGEST_RATIO * pipe).toPrecision(3));
      return [
        {
          code: 'out-of-range',
          path: at,
          message: `A hole of ${hole} m in a pipe of ${pipe} m is too wide to measure by: ${largest} m at most, or take the cap off and give the pipe's own diameter.`,
        },
      ];
    }
    return [];
  },

  rigDoubtful(rig, path) {
    const at = path + pointer('tap');
    if (rig.side === 'outlet') return [];
    if (rig.tap == null) {
      return [{ code: 'tap-assumed-far', path: at, text: TAP_ASSUMED }];
    }
    if (rig.lengthToTap_m == null || rig.pipeDiameter_m == null) return [];
    const diameters = rig.lengthToTap_m / rig.pipeDiameter_m;
    const text = `The tap is called ${rig.tap} but stands ${diameters.toFixed(1)} diameters behind the cap. Near is about 0.4, far is 5 or more.`;
    const fits = rig.tap === 'near' ? diameters <= NEAR_AT_MOST : diameters >= FAR_AT_LEAST;
    return fits ? [] : [{ code: 'tap-place-doubtful', path: at, text }];
  },

  doubtful(bench, row, path) {
    const at = path + pointer('staticPressure_Pa');
    if (bench.side === 'outlet' && row.staticPressure_Pa < 0) {
      return [
        {
          code: 'sign-doubtful',
          path: at,
          text: 'On the outlet side the pressure before a cap is above the room’s: it is taken as positive.',
        },
      ];
    }
    if (bench.side === 'inlet' && bench.tap === 'near' && isOpenEnd(bench.rig, row)) {
      return [
        {
          code: 'open-end-near-tap',
          path: at,
          text: 'With the cap off, a tap this near the end does not tell the flow well: the row counts little.',
        },
      ];
    }
    return [];
  },
};
