import { describe, expect, test } from 'vitest';
import type { Word } from '../../../../src/chart/labels/chains.ts';
import { framesApart, frameToNumbers } from '../../../../src/chart/labels/frames-by-numbers.ts';
import { withOwnOnly, type ReadScale } from '../../../../src/chart/labels/read-scales.ts';
import { scaleEnds } from '../../../../src/chart/labels/scale-ends.ts';
import { fitScale } from '../../../../src/chart/labels/scale-fit.ts';
import type { Side } from '../../../../src/chart/labels/tick-groups.ts';
import { tickNumbers } from '../../../../src/chart/labels/tick-number.ts';
import { photoPoint } from '../../../../src/chart/spaces.ts';

/** A frame of 1000 by 500 photo pixels whose bottom-left corner lies at (100, 700). */
const map = { toPhoto: (u: number, v: number) => photoPoint(100 + 1000 * u, 700 - 500 * v) };
const wordAt = (at: number): Word => ({ x0: at, x1: at + 1, y0: 0, y1: 1, run: 'level', pieces: [], size: 20 });

/** A scale whose numbers stand at these places of its side. */
function scaleOf(side: Side, numbers: readonly (readonly [at: number, text: string])[]): ReadScale {
  const labels = numbers.map(([at, text]) => ({
    at,
    numbers: tickNumbers(text),
    confidence: 0.95,
    text,
    word: wordAt(at),
  }));
  const fit = fitScale(labels)!;
  const points = fit.believed.map((b): [number, number] => [labels[b.index]!.at, b.value]);
  const { low, high, residual } = scaleEnds(fit, points, true);
  return {
    side,
    isInside: false,
    distance: 1,
    fit,
    labels,
    low,
    high,
    residual,
    arePointsUnsure: false,
    ticked: labels.length,
  };
}

const even = (texts: readonly string[], from: number, to: number) =>
  texts.map((text, i) => [from + ((to - from) * i) / (texts.length - 1), text] as const);
const FLOW = scaleOf('bottom', even(['0', '10', '20', '30', '40'], 0, 1));
const rounded = (corners: readonly (readonly [number, number])[]) =>
  corners.map(([x, y]) => [Math.round(x), Math.round(y)]);

describe('the frame its numbers speak for', () => {
  test('sides where the numbers end stay', () => {
    const value = scaleOf('left', even(['0', '100', '200', '300', '400'], 0, 1));
    expect(frameToNumbers({ scales: [FLOW, value], map })).toBeNull();
  });

  test('a last number that was left out at a half step moves nothing', () => {
    const value = scaleOf('left', even(['0', '100', '200', '300', '400'], 0, 1 / 1.125));
    expect(value.high.value).toBe(450);
    expect(frameToNumbers({ scales: [FLOW, value], map })).toBeNull();
  });

  test('a rule over the plot is not its upper side, nor one under it that would begin below nought', () => {
    const high = scaleOf('left', even(['0', '100', '200', '300', '400'], 0, 0.93));
    expect(rounded(frameToNumbers({ scales: [FLOW, high], map })!.corners)).toEqual([
      [100, 700],
      [1100, 700],
      [1100, 235],
      [100, 235],
    ]);
    const low = scaleOf('left', even(['0', '100', '200', '300', '400'], 0.2, 1));
    expect(low.low.value).toBe(-100);
    expect(rounded(frameToNumbers({ scales: [FLOW, low], map })!.corners)[0]).toEqual([100, 600]);
  });

  test('numbers that run on beyond a side put it where they end, unless another scale ends at it', () => {
    const wide = scaleOf('bottom', even(['0', '10', '20', '30', '40'], -0.04, 1));
    expect(rounded(frameToNumbers({ scales: [wide], map })!.corners)[0]).toEqual([60, 700]);
    const other = scaleOf('top', even(['0', '1', '2', '3', '4', '5'], 0, 1));
    expect(frameToNumbers({ scales: [wide, other], map })).toBeNull();
  });
});

describe('numbers that begin anew', () => {
  const column = scaleOf('left', [
    ...even(['0', '2', '4', '6'], 0, 0.3),
    ...even(['0', '100', '200', '300', '400'], 0.34, 1),
  ]);

  test('one column of two scales is two panels over one flow axis', () => {
    const [high, low] = framesApart({ scales: [FLOW, column], map });
    expect(rounded(high!.corners)[0]).toEqual([100, 530]);
    expect(rounded(high!.panel!)[3]).toEqual([100, 550]);
    expect(low!.corners).toEqual(high!.panel);
  });

  test('one row of two scales is two plots beside each other', () => {
    const row = scaleOf('bottom', [...even(['0', '10', '20', '30'], 0, 0.45), ...even(['0', '5', '10', '15'], 0.6, 1)]);
    const frames = framesApart({ scales: [row], map });
    expect(frames.map(({ corners }) => rounded(corners)[1])).toEqual([
      [550, 700],
      [1100, 700],
    ]);
    expect(framesApart({ scales: [FLOW], map })).toEqual([]);
  });

  test('the first number of the flow scale does not contradict the pressure scale it stands under', () => {
    const value = scaleOf('left', [[-0.03, '7'], ...even(['0', '100', '200', '300', '400'], 0, 1)]);
    expect(value.fit.against).toBe(1);
    expect(withOwnOnly([value])[0]!.fit.against).toBe(0);
    const doubted = scaleOf('left', [...even(['0', '100', '200', '300', '400'], 0, 1), [0.6, '7']]);
    expect(withOwnOnly([doubted])[0]!.fit.against).toBe(1);
    const shared = { ...FLOW, labels: FLOW.labels.map((l, i) => (i ? l : { ...l, word: doubted.labels[5]!.word })) };
    expect(withOwnOnly([doubted, shared])[0]!.fit.against).toBe(0);
  });
});
