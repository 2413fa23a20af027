/**
 * Air and straight pipes of the simulated world, from textbook formulas.
 * Sources: ISO 2533 pressure over altitude; ideal mixture with Magnus vapour pressure (WMO-No. 8); Sutherland; Colebrook by repetition.
 */
export type TrueAir = { density_kg_m3: number; viscosity_Pa_s: number };

export const pressureAtAltitude = (altitude_m: number) => 101_325 * (1 - (0.0065 * altitude_m) / 288.15) ** 5.25588;

export function airAt(temperature_C: number, pressure_Pa: number, humidity: number): TrueAir {
  const T = temperature_C + 273.15;
  const vapour = humidity * 611.2 * Math.exp((17.62 * temperature_C) / (243.12 + temperature_C));
  return {
    density_kg_m3: (pressure_Pa - vapour) / (287.055 * T) + vapour / (461.5 * T),
    viscosity_Pa_s: (1.716e-5 * (T / 273.15) ** 1.5 * (273.15 + 110.4)) / (T + 110.4),
  };
}

export const circle_m2 = (diameter_m: number) => (Math.PI / 4) * diameter_m ** 2;

/** Friction of a straight round pipe [Pa]. */
export function friction_Pa(
  pipe: { length_m: number; diameter_m: number; roughness_m: number },
  flow_m3_s: number,
  air: TrueAir,
): number {
  if (flow_m3_s <= 0) return 0;
  const speed = flow_m3_s / circle_m2(pipe.diameter_m);
  const reynolds = (air.density_kg_m3 * speed * pipe.diameter_m) / air.viscosity_Pa_s;
  const rough = pipe.roughness_m / pipe.diameter_m;
  const turbulent = Math.max(reynolds, 4000);
  let root = -1.8 * Math.log10((rough / 3.7) ** 1.11 + 6.9 / turbulent);
  for (let i = 0; i < 3; i++) root = -2 * Math.log10(rough / 3.7 + (2.51 * root) / turbulent);
  let f = root ** -2;
  if (reynolds < 4000) {
    const laminar = 64 / Math.min(reynolds, 2000);
    f = reynolds <= 2000 ? laminar : laminar + ((f - laminar) * (reynolds - 2000)) / 2000;
  }
  return f * (pipe.length_m / pipe.diameter_m) * (air.density_kg_m3 / 2) * speed * speed;
}
