/** How far one unit of each unknown moves a fan curve. */
export type ModelSpread = {
  /** standard deviations in ln: level of pressure, level of flow, outlet area, run speed */
  pressureLevel: number;
  flowLevel: number;
  outletArea: number;
  speed: number;
  /** smooth deviation of the pressure shape: standard deviation relative to the top pressure, and its length in x */
  shape: { sd: number; length: number };
  /** how much the shape is doubted beyond the printed ends, relative to the top pressure, growing with the square */
  beyond: number;
  /** level of power, where it was never printed that of the best efficiency; tilt towards shut-off; waves */
  powerLevel: number;
  powerTilt: number;
  powerShape: number;
};

/** Place of each unknown in the vector z. */
export const UNKNOWN = {
  pressureLevel: 0,
  flowLevel: 1,
  outletArea: 2,
  speed: 3,
  shape: 4,
  lowEnd: 11,
  highEnd: 12,
  powerLevel: 13,
  powerTilt: 14,
  powerShape: 15,
} as const;
export const SHAPE_TERMS = 7;
export const POWER_TERMS = 4;
export const CURVE_UNKNOWNS = UNKNOWN.powerShape + POWER_TERMS;

/** Standard deviations of the sine terms: their process has the stated deviation on average over 0..1. Source: see `curveModel`. */
export function shapeWeights({ sd, length }: ModelSpread['shape']): Float64Array {
  const weights = new Float64Array(SHAPE_TERMS);
  let sum = 0;
  for (let k = 0; k < SHAPE_TERMS; k++) {
    weights[k] = Math.exp(-(((k + 1) * Math.PI * length) ** 2) / 4);
    sum += weights[k]! ** 2 / 2;
  }
  return weights.map((w) => (sd * w) / Math.sqrt(sum));
}

/** sin(kπx), k from 1, for x in 0..1; beyond 1 straight on with its slope there, below 0 nothing. */
export function sineTerms(x: number, out: Float64Array): void {
  for (let k = 0; k < out.length; k++)
    out[k] =
      x <= 0 ? 0 : x >= 1 ? (k + 1) * Math.PI * (k % 2 === 0 ? -1 : 1) * (x - 1) : Math.sin((k + 1) * Math.PI * x);
}

/** Slope of `sineTerms` in x. */
export function sineSlopes(x: number, out: Float64Array): void {
  const at = Math.min(x, 1);
  for (let k = 0; k < out.length; k++) out[k] = x <= 0 ? 0 : (k + 1) * Math.PI * Math.cos((k + 1) * Math.PI * at);
}

/** cos(kπx), k from 1, for x in 0..1; the end values beyond: waves that leave both ends free. */
export function cosineTerms(x: number, out: Float64Array): void {
  const at = Math.min(Math.max(x, 0), 1);
  for (let k = 0; k < out.length; k++) out[k] = Math.cos((k + 1) * Math.PI * at);
}

/** Slope of `cosineTerms` in x. */
export function cosineSlopes(x: number, out: Float64Array): void {
  const inside = x > 0 && x < 1;
  for (let k = 0; k < out.length; k++) out[k] = inside ? -(k + 1) * Math.PI * Math.sin((k + 1) * Math.PI * x) : 0;
}

/** Σ c_k cos(kπx) as `cosineTerms` has them, by recurrence. */
export function cosineSeries(c: Float64Array, x: number): number {
  const cosine = Math.cos(Math.PI * Math.min(Math.max(x, 0), 1));
  let before = 1;
  let now = cosine;
  let sum = 0;
  for (let k = 0; k < c.length; k++) {
    sum += c[k]! * now;
    const next = 2 * cosine * now - before;
    before = now;
    now = next;
  }
  return sum;
}

/** Σ c_k sin(kπx) as `sineTerms` has them, by recurrence: quick where it is asked a hundred thousand times. */
export function sineSeries(c: Float64Array, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) {
    let slope = 0;
    for (let k = 0; k < c.length; k++) slope += c[k]! * (k + 1) * Math.PI * (k % 2 === 0 ? -1 : 1);
    return slope * (x - 1);
  }
  const angle = Math.PI * x;
  const twiceCos = 2 * Math.cos(angle);
  let before = 0;
  let sine = Math.sin(angle);
  let sum = 0;
  for (let k = 0; k < c.length; k++) {
    sum += c[k]! * sine;
    const next = twiceCos * sine - before;
    before = sine;
    sine = next;
  }
  return sum;
}
