import { choleskyFactor, solveLower, solveUpper } from '../../numeric/cholesky.ts';
import type { Control } from '../grid/bend-field.ts';
import { SIDE_NAMES, type SideName } from './find-sides.ts';
import type { FrameMap } from './frame-map.ts';
import { isLoose, type SnappedFrame } from './frame-snap.ts';
import { homographyOf, inverseOf, project } from '../../picture/homography.ts';
import { photoPoint, type Corners } from '../spaces.ts';

/** Where each side lies in the frame, for holding it there. */
const SIDE_LINES: Record<SideName, { axis: 0 | 1; value: 0 | 1 }> = {
  bottom: { axis: 1, value: 0 },
  top: { axis: 1, value: 1 },
  left: { axis: 0, value: 0 },
  right: { axis: 0, value: 1 },
};

/**
 * Corners of an open frame, from the round values that its grid lines and ticks stand for: the projective map that puts
 * every anchor at its value and leaves the printed sides where they are also tells where the open sides must lie.
 * @param flow,value anchors of the two axes on the sheet of the frame as it was taken so far
 * @returns the corners on two printed sides unchanged, the others moved; null where the anchors tell too little
 * Source: R. Hartley & A. Zisserman, Multiple View Geometry (2nd ed. 2004) §4.1 (direct linear transformation).
 */
export function cornersFromGrid(
  frame: SnappedFrame,
  map: FrameMap,
  flow: readonly Control[],
  value: readonly Control[],
): Corners | null {
  const normal = new Float64Array(64);
  const right = new Float64Array(8);
  const add = (u: number, v: number, axis: 0 | 1, truth: number, weight: number) => {
    // truth · (p6 u + p7 v + 1) = p(3·axis) u + p(3·axis+1) v + p(3·axis+2)
    const row = new Float64Array(8);
    row[3 * axis] = u;
    row[3 * axis + 1] = v;
    row[3 * axis + 2] = 1;
    row[6] = -truth * u;
    row[7] = -truth * v;
    for (let i = 0; i < 8; i++) {
      right[i]! += weight * row[i]! * truth;
      for (let j = 0; j < 8; j++) normal[8 * i + j]! += weight * row[i]! * row[j]!;
    }
  };
  for (const c of flow) add(c.u, c.v, 0, c.u + c.correction, c.weight);
  for (const c of value) add(c.u, c.v, 1, c.v + c.correction, c.weight);
  for (const name of SIDE_NAMES) {
    const { axis, value: at } = SIDE_LINES[name];
    for (let k = 0; k <= 8; k++) {
      const [u, v] = axis === 0 ? [at, k / 8] : [k / 8, at];
      // an open side is only a finger's guess
      add(u, v, axis, at, frame.sides[name].course ? HELD : GUESSED);
    }
  }
  for (let i = 0; i < 8; i++) normal[9 * i]! += 1e-9;
  const l = choleskyFactor(normal, 8);
  if (!l) return null;
  const p = solveUpper(l, 8, solveLower(l, 8, right));
  const back = inverseOf(Float64Array.from([...p, 1]));
  const square = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as const;
  const corners = square.map(([u, v], k) => {
    if (!isLoose(frame, k)) return frame.corners[k]!;
    const [su, sv] = project(back, u, v);
    return Math.abs(su - u) > FARTHEST || Math.abs(sv - v) > FARTHEST ? frame.corners[k]! : map.toPhoto(su, sv);
  });
  return homographyOf(square, corners) ? (corners.map(([x, y]) => photoPoint(x, y)) as unknown as Corners) : null;
}

const HELD = 2;
const GUESSED = 0.002;
/** A corner that would move further than this was not understood. */
const FARTHEST = 0.08;
