import { siteAir, type Air } from '../air/index.ts';
import { SURFACES, UNKNOWN_SURFACE } from '../pipe/index.ts';
import { pointer, type Warning } from '../issues/result.ts';
import type { Readings, Rig } from './schema.ts';

/** Default place of the tap, in diameters of the test pipe. Source: the job document's definition. */
const END_TO_TAP_DIAMETERS = { far: 8, near: 0.4 };
const TAP_TO_BLOWER_DIAMETERS = 1.5;

/**
 * A test rig with everything it leaves open filled in, and the factors by which its shared errors are tried out (1 or 0 when nothing is tried).
 */
export type Bench = {
  rig: Rig;
  side: 'inlet' | 'outlet';
  tap: 'far' | 'near';
  air: Air;
  /** inside of the pipe with the tap, or its hydraulic diameter [m]; its area [m2] */
  pipe: { diameter_m: number; area_m2: number; roughness_m: number };
  endToTap_m: number;
  tapToBlower_m: number;
  /** flow = coefficient × this; 1 + error */
  flowFactor: number;
  frictionFactor: number;
  /** loss of a plain pipe end on the velocity pressure [-] */
  openEndLoss: number;
};

/** Entry loss of a plain pipe end on its velocity pressure [-]. Source: industrial ventilation handbooks (recalled), 0.93. */
export const OPEN_END_LOSS = 0.93;

/** Shape of the pipe that holds the tap; null where the rig does not say. A cone's throat stands in for its pipe. */
export function pipeOf(rig: Rig): { diameter_m: number; area_m2: number } | null {
  const round = (d: number) => ({ diameter_m: d, area_m2: (Math.PI / 4) * d * d });
  if (rig.pipeDiameter_m != null) return round(rig.pipeDiameter_m);
  if (rig.width_m != null && rig.height_m != null) {
    const { width_m: w, height_m: h } = rig;
    return { diameter_m: (2 * w * h) / (w + h), area_m2: w * h };
  }
  return rig.throatDiameter_m != null ? round(rig.throatDiameter_m) : null;
}

/** The rig made complete; null where its pipe is not known. `air` is the air it was used in. */
export function benchOf(rig: Rig, air: Air): Bench | null {
  const shape = pipeOf(rig);
  if (shape === null) return null;
  const surface = rig.surface == null ? UNKNOWN_SURFACE : SURFACES[rig.surface];
  return {
    rig,
    side: rig.side ?? 'inlet',
    tap: rig.tap ?? 'far',
    air,
    pipe: { ...shape, roughness_m: Math.min(surface.roughness_m, shape.diameter_m / 10) },
    endToTap_m: rig.lengthToTap_m ?? END_TO_TAP_DIAMETERS[rig.tap ?? 'far'] * shape.diameter_m,
    tapToBlower_m: rig.lengthTapToBlower_m ?? TAP_TO_BLOWER_DIAMETERS * shape.diameter_m,
    flowFactor: 1,
    frictionFactor: 1,
    openEndLoss: OPEN_END_LOSS,
  };
}

/** Weather and height change a barometer's reading at one place by no more than this share. */
const SAME_PLACE = 0.05;
const NEAR_SEA_LEVEL_Pa = [99_500, 103_500] as const;

/**
 * Air at the test: what the readings say, the rest from the site.
 * A barometer without a temperature scales the site's air by the pressure.
 */
export function testAir(readings: Readings, site: Air, path: string): { air: Air; warnings: Warning[] } {
  const { temperature_C = null, barometricPressure_Pa = null, relativeHumidity = null } = readings.air ?? {};
  const warnings: Warning[] = [];
  const pressure_Pa = barometricPressure_Pa ?? site.pressure_Pa;
  const off = Math.abs(pressure_Pa / site.pressure_Pa - 1);
  if (off > SAME_PLACE && pressure_Pa >= NEAR_SEA_LEVEL_Pa[0] && pressure_Pa <= NEAR_SEA_LEVEL_Pa[1]) {
    warnings.push({
      code: 'barometer-not-at-site',
      path: path + pointer('air', 'barometricPressure_Pa'),
      text: `The shop's own air has about ${Math.round(site.pressure_Pa / 100)} hPa. Weather reports give the pressure brought to sea level: read the barometer where the test is made.`,
    });
  }
  if (temperature_C === null) {
    const air = { ...site, pressure_Pa, density_kg_m3: (site.density_kg_m3 * pressure_Pa) / site.pressure_Pa };
    return { air, warnings };
  }
  const moist = siteAir(
    { airTemperature_C: temperature_C, barometricPressure_Pa: pressure_Pa, relativeHumidity },
    path + pointer('air'),
  );
  return { air: moist.air, warnings: [...warnings, ...moist.warnings] };
}
