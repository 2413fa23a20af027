import { commonStep, type Believed, type ScaleFit, type ScaleLabel } from './scale-fit.ts';
import type { TickNumber } from './tick-number.ts';

/**
 * Labels that say a power of ten more or less than the scale has there: points were lost, on them or on all the others.
 * A leading nought ("05" where 5 should be), noughts alone ("00" for 0.0), or points read on several and on none of the
 * others, tell that it is the others: the whole scale is taken that much smaller.
 * @returns the fit, mended where that is so, and whether it stays unsure where the points are
 */
export function mendPoints(labels: readonly ScaleLabel[], fit: ScaleFit): { fit: ScaleFit; isUnsure: boolean } {
  if (fit.scale !== 'linear') return { fit, isUnsure: false };
  const tenths = misplaced(labels, fit).filter((m) => m.power < 0);
  const nought = tenths.find((t) => t.number.isRepaired);
  const power = (nought ?? tenths[0])?.power ?? powerOfNoughts(labels, fit);
  if (power === undefined) return { fit: withoutPoints(labels, fit), isUnsure: false };
  const pointed = tenths.filter((t) => t.number.hasPoint && t.power === power);
  const arePointsLost = pointed.length >= LEAST_POINTED && !fit.believed.some((b) => isPointed(labels, b));
  if (!nought && !arePointsLost && tenths.length) return { fit, isUnsure: true };
  const by = 10 ** power;
  const smaller = fit.believed.map((b) => ({ ...b, value: scaled(b.value, by), isRepaired: true }));
  const known = arePointsLost ? pointed.map(({ index, number }) => believed(index, number.value, false)) : [];
  const mended = withMore(labels, { ...fit, offset: fit.offset * by, slope: fit.slope * by, believed: smaller }, known);
  return { fit: mended, isUnsure: !arePointsLost || pointed.length < SURELY_POINTED * labels.length };
}

/** Nobody prints 0 as "00": where the others have no points either, all of them lost theirs. */
function powerOfNoughts(labels: readonly ScaleLabel[], fit: ScaleFit): number | undefined {
  // "02" is 0.2 already: its nought in front told where the point was
  if (fit.believed.some((b) => isPointed(labels, b) || (b.isRepaired && b.value !== 0))) return undefined;
  const behind = fit.believed.flatMap(({ index, value }) =>
    value === 0 ? (labels[index]!.numbers[0]?.noughtsBehind ?? []) : [],
  );
  return behind.length ? -Math.max(...behind) : undefined;
}

/** So many points read on labels, and on such a share of them, that they are no specks. */
const LEAST_POINTED = 2;
const SURELY_POINTED = 0.25;

/** Where several labels have their points, those that say ten times as much have lost theirs. */
function withoutPoints(labels: readonly ScaleLabel[], fit: ScaleFit): ScaleFit {
  const isPlaced = (b: Believed): boolean => isPointed(labels, b) || (b.isRepaired && b.value !== 0);
  if (fit.believed.filter(isPlaced).length < LEAST_POINTED) return fit;
  const lost = misplaced(labels, fit).filter((m) => m.power > 0 && !m.number.hasPoint);
  return withMore(
    labels,
    fit,
    lost.map(({ index, number, power }) => believed(index, scaled(number.value, 10 ** -power), true)),
  );
}

const scaled = (value: number, by: number): number => Number((value * by).toPrecision(10));
const believed = (index: number, value: number, isRepaired: boolean): Believed => ({ index, value, isRepaired });

function withMore(labels: readonly ScaleLabel[], fit: ScaleFit, more: readonly Believed[]): ScaleFit {
  const all = [...fit.believed, ...more].sort((a, b) => a.index - b.index);
  return {
    ...fit,
    believed: all,
    step: commonStep(all.map((b) => b.value)) || fit.step,
    against: labels.filter((l, i) => l.numbers.length && !all.some((b) => b.index === i)).length,
    weight: all.reduce((sum, { index }) => sum + labels[index]!.confidence, 0),
  };
}

type Misplaced = { readonly index: number; readonly number: TickNumber; readonly power: number };

/** Labels the scale does not believe whose figures are right: they say 10⁻³ to 10³ times what it has there. */
function misplaced(labels: readonly ScaleLabel[], fit: ScaleFit): Misplaced[] {
  const known = new Set(fit.believed.map((b) => b.index));
  return labels.flatMap(({ at, numbers }, index) => {
    if (known.has(index)) return [];
    const said = fit.offset + fit.slope * at;
    return numbers.flatMap((number) => {
      const power = Math.round(Math.log10(number.value / said));
      const isRight = power !== 0 && Math.abs(power) <= 3 && Math.abs(number.value / (said * 10 ** power) - 1) < NEAR;
      return isRight ? [{ index, number, power }] : [];
    });
  });
}

/** Labels stand so near to what their scale has there. */
const NEAR = 0.03;

const isPointed = (labels: readonly ScaleLabel[], { index, value }: Believed): boolean =>
  labels[index]!.numbers.some((n) => n.value === value && n.hasPoint === true);
