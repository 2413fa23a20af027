import type { Air } from '../air/index.ts';
import type { FanEvidence } from '../fan/estimate.ts';
import { FAMILY } from '../fan/families.ts';
import type { PressureObservation } from '../fan/observation.ts';
import type { Warning } from '../issues/result.ts';
import type { Blower, Ductwork, Supply, TestedWith } from '../job/types.ts';
import { motorAtSite, type MotorAtSite } from '../motor/index.ts';
import { chartCurve } from './charts.ts';
import { foundPower_W } from './found-motor.ts';
import { outletArea } from './outlet-area.ts';
import { ratedPoint } from './rated-points.ts';
import { readingObservations } from './readings.ts';
import { driveChange, wheelSpeed } from './run-speed.ts';
import type { RunState } from './run-state.ts';

/** Where a blower stands and what feeds it. */
export type Place = {
  air: Air;
  supply: Supply;
  /** [m] and [°C], for what the motor may carry there */
  altitude_m: number | null;
  ambient_C: number | null;
  ductwork: Ductwork | null;
  /** JSON Pointer of the blower */
  path: string;
};

/** All evidence of a blower, brought to run speed and site air, each piece with its pointer. */
export type Gathered = { evidence: FanEvidence; speed_rpm: number | null; motor: MotorAtSite; warnings: Warning[] };

/**
 * Brings every piece of a blower's evidence to run speed and site air: charts, pressure and power observations, what the family
 * promises a wheel of this size, and the motor on its mains.
 */
export function gatherEvidence(
  blower: Blower,
  { air, supply, altitude_m, ambient_C, ductwork, path }: Place,
): Gathered {
  const speed = wheelSpeed(blower, supply, path);
  const outlet = outletArea(blower, ductwork, path);
  const { motor: plate, drive, cable } = blower;
  const motor = motorAtSite({ motor: plate, drive, cable, supply, altitude_m, ambient_C, path });
  const run: RunState = { speed_rpm: speed.speed_rpm, speedSd: speed.sd, airDensity_kg_m3: air.density_kg_m3 };
  const warnings: Warning[] = [...speed.warnings, ...outlet.warnings, ...motor.warnings];
  const evidence: FanEvidence = {
    charts: [],
    pressures: [],
    powers: [],
    family: FAMILY[blower.wheel.family],
    familyLevel: levelOfFamily(blower, run),
    outletArea_m2: outlet.area_m2,
    outletAreaSd: outlet.sd,
    speedSd: speed.sd,
    airDensity_kg_m3: air.density_kg_m3,
    motorPowerAtWheel_W: foundPower_W(blower, { supply, altitude_m, ambient_C, path }, motor),
    testedUpTo_m3_s: null,
  };
  /** What names no speed of its own was taken at the speed of its day. */
  const atThenSpeed = <T extends { speed_rpm?: number | null; testedWith?: TestedWith | null }>(piece: T): T =>
    piece.speed_rpm != null || run.speed_rpm === null || piece.testedWith == null
      ? piece
      : { ...piece, speed_rpm: run.speed_rpm / driveChange(blower, supply, piece.testedWith) };
  blower.evidence.forEach((piece, i) => {
    const at = `${path}/evidence/${i}`;
    switch (piece.kind) {
      case 'chart': {
        const chart = chartCurve(atThenSpeed(piece), run, at);
        if (chart.curve) evidence.charts.push(chart.curve);
        warnings.push(...chart.warnings);
        return;
      }
      case 'rated-point': {
        const point = ratedPoint(atThenSpeed(piece), run, at);
        evidence.pressures.push(point.pressure);
        if (point.power) evidence.powers.push(point.power);
        warnings.push(...point.warnings);
        return;
      }
      case 'readings': {
        const rows = readingObservations(piece, {
          blower,
          supply,
          run,
          siteAir: air,
          motor,
          altitude_m,
          ambient_C,
          path: at,
        });
        evidence.pressures.push(...rows.pressures);
        evidence.powers.push(...rows.powers);
        evidence.testedUpTo_m3_s = furthest(evidence.testedUpTo_m3_s, rows.pressures);
        warnings.push(...rows.warnings);
        return;
      }
      case 'wheel':
        return;
    }
  });
  return { evidence, speed_rpm: speed.speed_rpm, motor, warnings };
}

/** Fewer rows than this that let air through are no opening step by step. */
const ROWS_OF_A_TEST = 3;

/** Greatest flow of tests of several rows [m3/s]. */
function furthest(before: number | null, rows: readonly PressureObservation[]): number | null {
  const flows = rows.map((o) => o.flow_m3_s).filter((q) => q > 0);
  return flows.length < ROWS_OF_A_TEST ? before : Math.max(before ?? 0, ...flows);
}

/** Shut-off pressure and free flow that the family promises a wheel of this size and speed. */
function levelOfFamily({ wheel }: Blower, run: RunState): FanEvidence['familyLevel'] {
  if (wheel.diameter_m == null || run.speed_rpm === null) return null;
  const { psiShutOff, phiFree } = FAMILY[wheel.family];
  const tip_m_s = (Math.PI * wheel.diameter_m * run.speed_rpm) / 60;
  return {
    pressure_Pa: (psiShutOff.centre * run.airDensity_kg_m3 * tip_m_s ** 2) / 2,
    flow_m3_s: phiFree.centre * (Math.PI / 4) * wheel.diameter_m ** 2 * tip_m_s,
  };
}
