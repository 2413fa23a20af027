/**
 * What a piece of evidence says about the curve, already brought to run speed and site air.
 * Errors are given as the change of flow and value for one standard deviation.
 */
export type ErrorEffect = { flow_m3_s: number; value: number };
export type SharedErrorEffect = ErrorEffect & { error: string };

export type PressureObservation = {
  kind: 'static' | 'total';
  flow_m3_s: number;
  pressure_Pa: number;
  /** errors that other observations share, by name; they do not average away */
  shared: SharedErrorEffect[];
  /** errors of this observation alone */
  own: ErrorEffect[];
  /** what one more pascal at the water tube would make of it; left out where no tube was read */
  perPascal?: ErrorEffect;
  /** JSON Pointer of the evidence it came from */
  path: string;
};

/**
 * Something that tells the wheel's shaft power at a flow: the power itself as printed, or watts, amps or speed of its motor.
 * Compared in natural logarithms, so `value` of the error effects is a share of the reading.
 */
export type PowerObservation = {
  flow_m3_s: number;
  /** shaft power of the wheel it points to [W], with everything unknown at its centre */
  shaftPower_W: number;
  lnReading: number;
  /** ln of the reading that a shaft power [W] would give, were the unknowns off by so many standard deviations each */
  lnForeseen(shaftPower_W: number, unknowns: ArrayLike<number>): number;
  /** names of those unknowns; of one name they are one and the same in all observations */
  unknowns: readonly string[];
  shared: SharedErrorEffect[];
  own: ErrorEffect[];
  path: string;
};

/** A shaft power as printed, W. Relative errors in `shared` and `own`. */
export const printedPower = (
  given: Pick<PowerObservation, 'flow_m3_s' | 'shaftPower_W' | 'shared' | 'own' | 'path'>,
): PowerObservation => ({
  ...given,
  lnReading: Math.log(given.shaftPower_W),
  lnForeseen: Math.log,
  unknowns: [],
});

/** Name of the error that the blower's own drive puts into every power read at its motor: it cancels when the load is worked out again. */
export const DRIVE_EFFICIENCY_ERROR = 'drive-efficiency';
/** The same for the blower's own motor: a plate in watts drawn rates its shaft by the very efficiency that readings are taken through. */
export const MOTOR_EFFICIENCY_ERROR = 'motor/efficiency';
