import type { Photo } from '../../picture/raster.ts';
import type { Outline } from '../lay-flat.ts';
import { areaOf, quadIn, standingOut, type Region } from './regions.ts';
import { snapSide, type Side } from './sides.ts';
import { viewOf, type View } from './view.ts';

type Xy = readonly [number, number];
type Quad = readonly [Xy, Xy, Xy, Xy];

const COARSE_PX = 420;
const FINE_PX = 1100;
/** Quadrilaterals worth a closer look. */
const LOOKED_AT = 14;
/** Under this, nothing on the photo looks like the edge of a plate. */
const LEAST_WORTH = 0.3;

/** The whole photo as an outline. */
export function wholePhoto({ full: { width, height } }: Photo): Outline {
  const corners: Outline['corners'] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return { corners, bulges: [0, 0, 0, 0] };
}

/**
 * Finds the outline of the plate a photo was taken of: any colour on any ground, round corners, curved sides.
 * @returns null where no four sides stand out clearly enough
 */
export function findOutline(photo: Photo): Outline | null {
  const coarse = viewOf(photo.half, COARSE_PX);
  const candidates = distinct(
    standingOut(coarse)
      .map((region) => ({ region, quad: quadIn(region.hull) }))
      .filter((one): one is { region: Region; quad: [Xy, Xy, Xy, Xy] } => one.quad !== null)
      .map(({ region, quad }) => ({
        quad: quad as Quad,
        solid: region.area / region.hullArea,
        worth: shapeWorth(region, quad, coarse),
      })),
  );
  let best: { sides: Side[]; worth: number } | null = null;
  for (const { quad, solid } of candidates.slice(0, LOOKED_AT)) {
    const size = Math.sqrt(areaOf(quad));
    const sides = snapAll(coarse, quad, Math.max(4, 0.05 * size), 0.1 * size);
    const worth = worthOf(sides, solid, coarse);
    if (!best || worth > best.worth) best = { sides, worth };
  }
  if (!best || best.worth < LEAST_WORTH) return null;
  const fine = viewOf(photo.half, FINE_PX);
  const ratio = coarse.scale / fine.scale;
  const corners = cornersOf(best.sides).map(([x, y]): Xy => [x * ratio, y * ratio]);
  const bulges = best.sides.map((side) => side.bulge * ratio);
  const sides = refine(fine, corners, bulges, 4 * ratio);
  const toPhoto = 2 * fine.scale;
  return startingTopLeft({
    corners: cornersOf(sides).map(([x, y]): Xy => [x * toPhoto, y * toPhoto]) as unknown as Outline['corners'],
    bulges: sides.map((side) => side.bulge * toPhoto) as unknown as Outline['bulges'],
  });
}

/** How much a region looks like a plate by its shape alone: full, four-sided, near the middle. */
function shapeWorth({ hullArea, area }: Region, quad: Quad, { width, height }: View): number {
  const fourSided = areaOf(quad) / hullArea;
  const [cx, cy] = [0, 1].map((k) => quad.reduce((s, p) => s + p[k as 0 | 1], 0) / 4) as [number, number];
  const away = Math.hypot(cx / width - 0.5, cy / height - 0.5);
  return fourSided ** 3 * Math.sqrt(area / hullArea) * (1 - away) * Math.sqrt(hullArea / (width * height));
}

/** Candidates from the best down, none twice. */
function distinct<T extends { quad: Quad; worth: number }>(all: readonly T[]): T[] {
  const kept: T[] = [];
  for (const one of [...all].sort((a, b) => b.worth - a.worth)) {
    const isNew = kept.every(({ quad }) =>
      quad.some((p, i) => Math.hypot(p[0] - one.quad[i]![0], p[1] - one.quad[i]![1]) > 8),
    );
    if (isNew) kept.push(one);
  }
  return kept;
}

const snapAll = (view: View, quad: readonly Xy[], reach: number, bulges: number): Side[] =>
  quad.map((p, i) => snapSide(view, p, quad[(i + 1) % 4]!, reach, bulges));

function refine(view: View, corners: readonly Xy[], bulges: readonly number[], reach: number): Side[] {
  return corners.map((p, i) => {
    const q = corners[(i + 1) % 4]!;
    return snapSide(view, p, q, reach, Math.abs(bulges[i]!) > reach / 2 ? Math.abs(bulges[i]!) + reach : reach / 2);
  });
}

/** Clear edges on all four sides, the weakest counting most. */
function worthOf(sides: readonly Side[], solid: number, view: View): number {
  const corners = cornersOf(sides);
  if (!isConvex(corners)) return 0;
  const weakest = Math.min(...sides.map(({ clear }) => clear));
  const mean = sides.reduce((s, { clear }) => s + clear, 0) / 4;
  const steps = sides.reduce((s, { step }) => s + Math.min(40, step), 0) / 160;
  const share = areaOf(corners) / (view.width * view.height);
  const isInside = corners.every(
    ([x, y]) => x > -0.03 * view.width && y > -0.03 * view.height && x < 1.03 * view.width && y < 1.03 * view.height,
  );
  return isInside
    ? (0.5 * weakest + 0.5 * mean) * (0.5 + 0.5 * steps) * Math.sqrt(solid) * Math.min(1, 0.6 + share)
    : 0;
}

function isConvex(corners: readonly Xy[]): boolean {
  return corners.every((p, i) => {
    const [q, r] = [corners[(i + 1) % 4]!, corners[(i + 2) % 4]!];
    return (q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]) > 0;
  });
}

/** Where neighbouring sides meet, their chords carried on. */
function cornersOf(sides: readonly Side[]): Xy[] {
  return sides.map((side, i) => {
    const before = sides[(i + 3) % 4]!;
    return meeting(before.from, before.to, side.from, side.to) ?? side.from;
  });
}

function meeting(a: Xy, b: Xy, c: Xy, d: Xy): Xy | null {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-6) return null;
  const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / cross;
  return [a[0] + t * ux, a[1] + t * uy];
}

/** The corner that is most likely the top left: the one before the side that runs most to the right. */
function startingTopLeft({ corners, bulges }: Outline): Outline {
  const heading = (i: number) => {
    const [p, q] = [corners[i]!, corners[(i + 1) % 4]!];
    return (q[0] - p[0]) / Math.hypot(q[0] - p[0], q[1] - p[1]);
  };
  const first = [0, 1, 2, 3].reduce((a, b) => (heading(b) > heading(a) ? b : a));
  const from = <T>(all: readonly T[]) => all.map((_, i) => all[(i + first) % 4]!);
  return {
    corners: from(corners) as unknown as Outline['corners'],
    bulges: from(bulges) as unknown as Outline['bulges'],
  };
}
