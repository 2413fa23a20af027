import type { PlateField } from './plate-field.ts';

/** A plate with its gaps filled. `estimated` names what no plate said; `doubt` is one relative standard deviation each [-]. */
export type WholePlate = {
  kind: 'induction' | 'universal' | 'dc';
  phases: 1 | 3;
  /** at the shaft [W] */
  ratedPower_W: number;
  speed_rpm: number | null;
  poles: number | null;
  /** null where the speed is not known or is no induction motor's */
  synchronousSpeed_rpm: number | null;
  frequency_Hz: number;
  voltage_V: number;
  /** line current at rated power, the limit its windings stand [A] */
  current_A: number;
  /** the one that makes power, volts, amps and efficiency agree */
  powerFactor: number;
  efficiency: number;
  serviceFactor: number;
  /** wound anew: watts, amps and slip are claims */
  rewound: boolean;
  doubt: { efficiency: number; powerFactor: number; ratedPower: number; current: number };
  estimated: PlateField[];
};
