import { describe, expect, it } from 'vitest';
import { descend, type Minimum } from '../../src/fan/descend.ts';
import type { Comparison } from '../../src/fan/residuals.ts';
import { solveLower } from '../../src/numeric/cholesky.ts';
import { readReference } from './read-reference.ts';

/**
 * The fit that finds fan curves, on problems whose answers are certified to fifteen digits: NIST Statistical Reference Datasets,
 * linear least squares, fixtures/reference/fit.json. Each unknown is a deviate so wide that its prior has no say. Columns are made
 * orthogonal first, as the fan model's own unknowns nearly are; Filip and Longley cannot be told apart without.
 */
type Problem = {
  data: number[][];
  rows: { parameter: string; certified: number; certified_sd?: number }[];
};
const { sections } = readReference<{ sections: Record<string, Problem> }>('fit.json');

/** Prior standard deviation of each unknown against the size it can have. */
const WIDE = 1e6;

/** Relative tolerance of coefficients, in the fixture's words: 1e-6 with an orthogonal basis for the hard ones, else 1e-8. */
const TOLERANCE: Record<string, number> = { Filip: 1e-6, Wampler4: 1e-6, Wampler5: 1e-6, Longley: 1e-6 };

const certified = ({ rows }: Problem, name: string) => rows.find((r) => r.parameter === name)!;
const dot = (a: readonly number[], b: readonly number[]) => a.reduce((s, v, i) => s + v * b[i]!, 0);
const ownColumns = (problem: Problem): number[][] => {
  const coefficients = problem.rows.filter((r) => /^B\d+$/.test(r.parameter)).length;
  const x = problem.data.map((row) => row.slice(1));
  const several = x[0]!.length > 1;
  return Array.from({ length: coefficients }, (_, k) =>
    x.map((row) => (several ? (k === 0 ? 1 : row[k - 1]!) : row[0]! ** k)),
  );
};

/** Columns of length one at right angles, and how each is made of the problem's own. Twice, lest rounding bends the angles. */
function orthogonal(columns: readonly number[][]): { unit: number[][]; made: number[][] } {
  const unit: number[][] = [];
  const made: number[][] = [];
  columns.forEach((column, k) => {
    let rest = [...column];
    const recipe = columns.map((_, i) => (i === k ? 1 : 0));
    for (let pass = 0; pass < 2; pass++)
      unit.forEach((u, i) => {
        const along = dot(u, rest);
        rest = rest.map((v, j) => v - along * u[j]!);
        made[i]!.forEach((m, j) => (recipe[j]! -= along * m));
      });
    const length = Math.sqrt(dot(rest, rest));
    unit.push(rest.map((v) => v / length));
    made.push(recipe.map((m) => m / length));
  });
  return { unit, made };
}

function fitted(problem: Problem): { coefficients: number[]; sds: number[]; residualSd: number; minimum: Minimum } {
  const y = problem.data.map((row) => row[0]!);
  const { unit, made } = orthogonal(ownColumns(problem));
  const n = unit.length;
  const size = Math.sqrt(dot(y, y));
  const scale = WIDE * size;
  const sd = Math.max(certified(problem, 'residual_sd').certified, 1e-9 * size);
  const compare: Comparison = {
    sharedErrors: [],
    unknowns: n,
    residuals: y.length,
    paths: [],
    evaluate: (z, out) =>
      y.forEach((v, i) => (out[i] = unit.reduce((s, column, k) => s + scale * z[k]! * column[i]!, -v))),
    lnPerPascal: () => 0,
    deviations: (_, out) => void out.fill(sd),
    slopes: (_, __, out) => y.forEach((_v, i) => unit.forEach((column, k) => (out[i * n + k] = scale * column[i]!))),
  };
  const minimum = descend(compare, new Float64Array(n));
  const back = (z: ArrayLike<number>) => made[0]!.map((_, j) => made.reduce((s, m, k) => s + scale * z[k]! * m[j]!, 0));
  const sds = made[0]!.map((_, j) => {
    const direction = Float64Array.from(made, (m) => scale * m[j]!);
    return Math.hypot(...solveLower(minimum.precision, n, direction));
  });
  const residualSd = Math.sqrt(dot([...minimum.residuals], [...minimum.residuals]) / (y.length - n));
  return { coefficients: back(minimum.z), sds, residualSd, minimum };
}

describe.each(Object.keys(sections))('NIST %s', (name) => {
  const problem = sections[name]!;
  const ours = fitted(problem);
  const within = TOLERANCE[name] ?? 1e-8;

  it('comes out with the certified coefficients', () => {
    ours.coefficients.forEach((b, k) => {
      const theirs = certified(problem, `B${k}`).certified;
      expect(Math.abs(b / theirs - 1), `B${k}: ${b} against ${theirs}`).toBeLessThan(within);
    });
  });

  it('knows how surely, and what is left over', () => {
    const residualSd = certified(problem, 'residual_sd').certified;
    const exact = residualSd < 1e-50;
    if (exact) {
      expect(ours.residualSd / Math.abs(problem.data.at(-1)![0]!)).toBeLessThan(1e-10);
      return;
    }
    expect(Math.abs(ours.residualSd / residualSd - 1)).toBeLessThan(within);
    ours.sds.forEach((sd, k) =>
      expect(Math.abs(sd / certified(problem, `B${k}`).certified_sd! - 1)).toBeLessThan(Math.max(within, 1e-6)),
    );
  });
});

it('would be caught stopping short of the answer', () => {
  const { coefficients } = fitted({ ...sections.Norris!, data: sections.Norris!.data.slice(1) });
  expect(Math.abs(coefficients[1]! / certified(sections.Norris!, 'B1').certified - 1)).toBeGreaterThan(1e-6);
});
