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
  /** JSON Pointer of the evidence it came from */
  path: string;
};

/** Shaft power of the wheel seen at a flow; `value` of the error effects is in ln(power). */
export type PowerObservation = {
  flow_m3_s: number;
  shaftPower_W: number;
  shared: SharedErrorEffect[];
  own: ErrorEffect[];
  path: string;
};

/** Name of the error that the blower's own drive puts into every power read at its motor: it cancels when the load is worked out again. */
export const DRIVE_EFFICIENCY_ERROR = 'drive-efficiency';
