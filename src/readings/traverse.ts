/**
 * Where to hold a pitot tube or an anemometer so that the plain mean of the readings is the mean speed of the air.
 * Positions are shares of the width, from one wall to the other.
 *
 * Log-linear: v = a + b·ln y + c·y holds exactly in each of a set of rings of equal area, two points a ring; with an odd number the
 * outermost ring is half as large and has one point of the pure log law. Log-Tchebycheff: one log-law point in the outermost share of
 * the area, equal-weight Tchebycheff points over the rest.
 * Source: ISO 3966 and ISO 5802, tables 2 and 3; rule after Winternitz & Fischl (1957).
 */
export type TraverseRule = 'log-linear' | 'log-Tchebycheff' | 'equal-area';

/**
 * Points of equal weight for polynomials on −1..1, right half; with 8 points and from 10 on there are none.
 * Source: Abramowitz & Stegun, 25.4.28 (Chebyshev's quadrature).
 */
const TCHEBYCHEFF: Record<number, readonly number[]> = {
  2: [0.5773502692],
  3: [0, 0.7071067812],
  4: [0.1875924741, 0.7946544723],
  5: [0, 0.3745414096, 0.832497487],
  6: [0.2666354015, 0.4225186538, 0.8662468181],
  7: [0, 0.3239118105, 0.5296567753, 0.8838617008],
  9: [0, 0.1679061842, 0.5287617831, 0.6010186554, 0.9115893077],
};

/** Numbers of points a radius, and across a side, for which log-Tchebycheff positions exist. */
export const LOG_TCHEBYCHEFF_PER_RADIUS = Object.keys(TCHEBYCHEFF).map((n) => Number(n) + 1);
export const LOG_TCHEBYCHEFF_PER_SIDE = Object.keys(TCHEBYCHEFF).map((n) => Number(n) + 2);

function tchebycheffPoints(count: number): number[] {
  const right = TCHEBYCHEFF[count];
  if (right === undefined)
    throw new RangeError(`traverse: no log-Tchebycheff positions exist with ${count} inner points`);
  return [...right.filter((x) => x > 0).map((x) => -x), ...right].sort((a, b) => a - b);
}

/** ∫ ln y · 2(1 − y) dy from 0 to `y`: the log law weighted with the area of a circle of radius 1. */
const logLawIntegral = (y: number): number => (y === 0 ? 0 : 2 * y * (Math.log(y) - 1) - y * y * (Math.log(y) - 0.5));

/** Mean of ln y and of y over the ring between two radii (of 1), y the distance from the wall. */
function ringMeans(inner: number, outer: number): { logY: number; y: number } {
  const area = outer ** 2 - inner ** 2;
  return {
    logY: (logLawIntegral(1 - inner) - logLawIntegral(1 - outer)) / area,
    y: 1 - ((2 / 3) * (outer ** 3 - inner ** 3)) / area,
  };
}

/** Distance from the wall (radius 1) of the one point that stands for the outermost `share` of the area under the pure log law. */
const logLawPoint = (share: number): number => Math.exp(ringMeans(Math.sqrt(1 - share), 1).logY);

/** Two distances from the wall whose mean and whose mean logarithm are the ring's. */
function twoOfRing(inner: number, outer: number): [number, number] {
  const { logY, y } = ringMeans(inner, outer);
  const apart = Math.sqrt(y * y - Math.exp(2 * logY));
  return [y - apart, y + apart];
}

/** Distances from the wall along one radius (of 1), rising. */
const ALONG_RADIUS: Record<TraverseRule, (count: number) => number[]> = {
  'equal-area': (count) => Array.from({ length: count }, (_, i) => 1 - Math.sqrt((2 * (count - i) - 1) / (2 * count))),
  'log-Tchebycheff': (count) => {
    const rest = (count - 1) / count;
    const inner = tchebycheffPoints(count - 1).map((t) => 1 - Math.sqrt((rest * (1 + t)) / 2));
    return [logLawPoint(1 / count), ...inner].sort((a, b) => a - b);
  },
  'log-linear': (count) => {
    const single = count % 2 === 1 ? [logLawPoint(1 / count)] : [];
    const rings = Array.from(
      { length: Math.floor(count / 2) },
      (_, i) => [Math.sqrt((2 * i) / count), Math.sqrt((2 * i + 2) / count)] as const,
    );
    return [...single, ...rings.flatMap(([inner, outer]) => twoOfRing(inner, outer))].sort((a, b) => a - b);
  },
};

/**
 * Positions across a round pipe, as shares of its diameter [-], wall to wall.
 * @param pointsPerRadius 2..30; log-Tchebycheff only where `LOG_TCHEBYCHEFF_PER_RADIUS` has it
 * @returns twice as many positions, rising, to be used on each of the diameters; all count alike
 * Throws RangeError for a number of points that has no such positions.
 */
export function circularTraverse(rule: TraverseRule, pointsPerRadius: number): number[] {
  if (!Number.isInteger(pointsPerRadius) || pointsPerRadius < 2 || pointsPerRadius > 30) {
    throw new RangeError(`circularTraverse: expected 2..30 points a radius, received ${pointsPerRadius}`);
  }
  const near = ALONG_RADIUS[rule](pointsPerRadius).map((y) => y / 2);
  return [...near, ...near.map((y) => 1 - y).reverse()];
}

/**
 * Positions across one side of a rectangular channel, as shares of that side [-], wall to wall; readings at every crossing, all count alike.
 * @param pointsPerSide 4..9 or 11 for log-Tchebycheff, 1..30 for equal-area
 * Throws RangeError for a number of points that has no such positions.
 */
export function rectangularTraverse(rule: 'log-Tchebycheff' | 'equal-area', pointsPerSide: number): number[] {
  if (!Number.isInteger(pointsPerSide) || pointsPerSide < 1 || pointsPerSide > 30) {
    throw new RangeError(`rectangularTraverse: expected 1..30 points a side, received ${pointsPerSide}`);
  }
  if (rule === 'equal-area') return Array.from({ length: pointsPerSide }, (_, i) => (i + 0.5) / pointsPerSide);
  const end = 1 / (pointsPerSide * Math.E);
  const strip = 1 / pointsPerSide;
  const inner = tchebycheffPoints(pointsPerSide - 2).map((t) => strip + ((1 - 2 * strip) * (1 + t)) / 2);
  return [end, ...inner, 1 - end];
}
