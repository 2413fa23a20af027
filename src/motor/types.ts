/** What a motor's plate says; null or left out is unknown. The job's motor has this shape. */
export type MotorPlate = {
  kind?: 'induction' | 'universal' | 'dc' | null;
  /** [W]: at the shaft or drawn from the mains, see `ratedPowerMeaning` */
  ratedPower_W: number;
  ratedPowerMeaning?: 'shaft' | 'input' | null;
  speed_rpm?: number | null;
  /** line to line [V] */
  voltage_V?: number | null;
  /** line current at rated power [A] */
  current_A?: number | null;
  /** [-] */
  powerFactor?: number | null;
  /** [-] */
  efficiency?: number | null;
  /** [-] */
  serviceFactor?: number | null;
  phases?: 1 | 3 | null;
  frequency_Hz?: number | null;
  /** amps with the belt off or the wheel taken off [A] */
  idleCurrent_A?: number | null;
  /** wound anew by somebody: the plate is a claim */
  rewound?: boolean | null;
  /** how a three-phase motor gets its other phases from a one-phase mains */
  fedThrough?: 'capacitor' | 'inverter' | null;
  /** what gets a single-phase motor turning */
  startsBy?: SinglePhaseStart | null;
};

/** Ways a single-phase motor gets turning. */
export type SinglePhaseStart = 'start-capacitor' | 'run-capacitor' | 'split-phase' | 'shaded-pole';

/** The mains at the place; null or left out is unknown. */
export type Supply = {
  /** line to line [V] */
  voltage_V?: number | null;
  /** lowest voltage of the day [V] */
  lowestVoltage_V?: number | null;
  frequency_Hz?: number | null;
  phases?: 1 | 3 | null;
  /** largest deviation of the three voltages from their mean ÷ mean [-] */
  voltageUnbalance?: number | null;
};

/** Cable from the board to the motor, as the job has it. */
export type SupplyCable = {
  /** one way [m] */
  length_m?: number | null;
  /** of one conductor [m2] */
  crossSection_m2?: number | null;
  metal?: 'copper' | 'aluminium' | null;
};

/** How the motor turns the wheel. */
export type Drive = {
  kind: 'belt' | 'direct';
  motorPulleyDiameter_m?: number | null;
  wheelPulleyDiameter_m?: number | null;
  /** [-] */
  efficiency?: number | null;
};
