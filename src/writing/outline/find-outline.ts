import type { Photo } from '../../picture/raster.ts';
import type { Outline } from '../lay-flat.ts';
import { quadsOfEdges } from './edge-quads.ts';
import { lettersOn, type LetterPlace } from './letters-near.ts';
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
const LEAST_WORTH = 0.25;

/** Fewer than this tell nothing. */
const FEW_LETTERS = 8;
/** A mottled ground is full of what looks like letters: they weigh, and do not decide. */
const LETTERS_COUNT = 0.6;
/** A table on a plate has clear sides too: of nested outlines the outer one is the plate's. */
const OUTER = 0.12;
/** Curved sides are rare. */
const CURVED = 0.97;

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
  const fine = viewOf(photo.full, FINE_PX);
  const shrink = fine.scale / (2 * coarse.scale);
  const letters = lettersOn(fine).map((one) => ({ ...one, x: one.x * shrink, y: one.y * shrink }));
  const regions = standingOut(coarse)
    .map((region) => ({ region, quad: quadIn(region.hull) }))
    .filter((one): one is { region: Region; quad: [Xy, Xy, Xy, Xy] } => one.quad !== null)
    .map(({ region, quad }) => ({ quad: quad as Quad, worth: shapeWorth(region, quad) * lettersIn(quad, letters) }));
  const edges = quadsOfEdges(coarse).map((quad) => ({ quad, worth: lettersIn(quad, letters) }));
  const candidates = [...distinct(regions).slice(0, LOOKED_AT), ...distinct(edges).slice(0, LOOKED_AT)];
  let best: { sides: Side[]; worth: number } | null = null;
  for (const { quad } of candidates) {
    const size = Math.sqrt(areaOf(quad));
    const rough = snapAll(coarse, quad, Math.max(4, 0.05 * size), 0.1 * size);
    const sides = isConvex(cornersOf(rough)) ? again(coarse, rough) : rough;
    const worth = worthOf(sides, letters, coarse);
    if (!best || worth > best.worth) best = { sides, worth };
  }
  if (!best || best.worth < LEAST_WORTH) return null;
  const ratio = 1 / shrink;
  const corners = cornersOf(best.sides).map(([x, y]): Xy => [x * ratio, y * ratio]);
  const bulges = best.sides.map((side) => side.bulge * ratio);
  const sides = refine(fine, corners, bulges, 4 * ratio);
  const toPhoto = fine.scale;
  return startingTopLeft({
    corners: cornersOf(sides).map(([x, y]): Xy => [x * toPhoto, y * toPhoto]) as unknown as Outline['corners'],
    bulges: sides.map((side) => side.bulge * toPhoto) as unknown as Outline['bulges'],
  });
}

/** How much a region looks like a plate by its shape alone: full and four-sided. */
const shapeWorth = ({ hullArea, area }: Region, quad: Quad): number =>
  (areaOf(quad) / hullArea) ** 3 * Math.sqrt(area / hullArea);

/** Share of all letters that stand within a quadrilateral; one half where there are none to go by. */
function lettersIn(quad: readonly Xy[], letters: readonly LetterPlace[]): number {
  const isIn = ({ x, y }: LetterPlace) =>
    quad.every((p, i) => {
      const q = quad[(i + 1) % 4]!;
      return (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]) > 0;
    });
  const weightOf = (some: readonly LetterPlace[]) => some.reduce((sum, { weight }) => sum + weight, 0);
  return letters.length < FEW_LETTERS ? 0.5 : weightOf(letters.filter(isIn)) / weightOf(letters);
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

/** Once more from the corners found: a bulge is measured from them. */
const again = (view: View, sides: readonly Side[]): Side[] =>
  refine(
    view,
    cornersOf(sides),
    sides.map((s) => s.bulge),
    5,
  );

function refine(view: View, corners: readonly Xy[], bulges: readonly number[], reach: number): Side[] {
  return corners.map((p, i) =>
    snapSide(view, p, corners[(i + 1) % 4]!, reach, bulges[i] === 0 ? 0 : Math.abs(bulges[i]!) + reach),
  );
}

/** Clear edges on all four sides, the weakest counting most, around as many of the letters as possible. */
function worthOf(sides: readonly Side[], letters: readonly LetterPlace[], view: View): number {
  const corners = cornersOf(sides);
  const isInside = corners.every(
    ([x, y]) => x > -0.04 * view.width && y > -0.04 * view.height && x < 1.04 * view.width && y < 1.04 * view.height,
  );
  if (!isConvex(corners) || !isInside) return 0;
  const weakest = Math.min(...sides.map(({ clear }) => clear));
  const mean = sides.reduce((s, { clear }) => s + clear, 0) / 4;
  const steps = sides.reduce((s, { step }) => s + Math.min(40, step), 0) / 160;
  const share = Math.max(0, areaOf(corners)) / (view.width * view.height);
  const bulges = sides.filter(({ bulge }) => bulge !== 0).length;
  return (
    (0.5 * weakest + 0.5 * mean) *
    (0.5 + 0.5 * steps) *
    (1 - LETTERS_COUNT + LETTERS_COUNT * lettersIn(corners, letters)) *
    CURVED ** bulges *
    share ** OUTER
  );
}

/** No corner of a plate looks sharper or blunter, however obliquely it is seen: sine of the angle. */
const LEAST_CORNER = 0.6;

function isConvex(corners: readonly Xy[]): boolean {
  return corners.every((p, i) => {
    const [q, r] = [corners[(i + 1) % 4]!, corners[(i + 2) % 4]!];
    const turn = (q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]);
    return turn > LEAST_CORNER * Math.hypot(q[0] - p[0], q[1] - p[1]) * Math.hypot(r[0] - q[0], r[1] - q[1]);
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
