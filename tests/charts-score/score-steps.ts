import type { AxisTruth } from '../../fixtures/generate/photo/truth.ts';
import type { AxisReading } from '../../src/chart/index.ts';
import { unitByName } from '../../src/units/index.ts';
import type { PhotoScore } from './score-photo.ts';

/** How each step of one reading went; null where the step was not reached. */
export type StepScore = {
  /** farthest corner from its true place, whichever way up, pixels and share of the frame's diagonal */
  corners_px: number | null;
  frameFound: boolean;
  upright: boolean | null;
  axesRight: number;
  axesAsked: number;
  /** what was wrong, of the axes that were not right */
  axisFaults: string[];
  /** the flag is up where it should be and only there */
  flagRight: boolean;
};

const FRAME_NEAR = 0.02;
const AXIS_NEAR = 0.005;

export function scoreSteps({ truth, reading, curves, good, dangers, flagged }: PhotoScore): StepScore {
  const corners = reading ? cornersOff(reading.frameCorners_px, truth.chart.frameCornersPx) : null;
  const asked = truth.chart.axes.filter((a) => a.id === 'x' || curves.some((c) => c.truth.yAxis === a.id));
  const faults = asked.flatMap((axis) => {
    const fault = axisFault(axis, reading?.axes ?? []);
    return fault ? [`${axis.id} ${fault}`] : [];
  });
  return {
    corners_px: corners?.off_px ?? null,
    frameFound: corners !== null && corners.share < FRAME_NEAR,
    upright: corners !== null && corners.share < FRAME_NEAR ? corners.turn === 0 : null,
    axesAsked: asked.length,
    axesRight: asked.length - faults.length,
    axisFaults: faults,
    flagRight: flagged !== (good && dangers.length === 0),
  };
}

type Corner = readonly [number, number];

/** The read corners in the turn that fits best. */
function cornersOff(
  read: readonly Corner[],
  truth: readonly Corner[],
): { off_px: number; share: number; turn: number } | null {
  if (read.length !== 4) return null;
  const diagonal = Math.hypot(truth[2]![0] - truth[0]![0], truth[2]![1] - truth[0]![1]);
  const turns = [0, 1, 2, 3].map((turn) => ({
    turn,
    off_px: Math.max(
      ...truth.map(([x, y], k) => Math.hypot(read[(k + turn) % 4]![0] - x, read[(k + turn) % 4]![1] - y)),
    ),
  }));
  const best = turns.reduce((a, b) => (b.off_px < a.off_px ? b : a));
  return { ...best, share: best.off_px / diagonal };
}

/** What is wrong with the read axis, or null. */
function axisFault(truth: AxisTruth, read: readonly AxisReading[]): string | null {
  const axis =
    read.find((a) => a.id === truth.id && a.quantity === truth.quantity) ??
    read.find((a) => a.quantity === truth.quantity);
  if (!axis) return 'missing';
  if (axis.scale !== truth.scale) return 'scale';
  const factor = unitByName(axis.unit)?.factor;
  // 4 °C water and 1000 kg/m³ differ by less than anybody prints
  if (factor === undefined || Math.abs(factor / truth.siFactor - 1) > 1e-3) return 'unit';
  const near = (a: number, b: number, span: number) => Math.abs(a - b) <= AXIS_NEAR * span;
  const even = (v: number) => (truth.scale === 'log' ? Math.log(v) : v);
  const span = even(truth.max) - even(truth.min);
  return near(even(axis.min), even(truth.min), span) && near(even(axis.max), even(truth.max), span) ? null : 'ends';
}
