import type { Outline } from '../../writing/index.ts';

/** A side this near to the border of the photo, share of its width or height, is where the photo cuts the sheet off. */
const NEAR = 0.025;

/**
 * Whether a sheet reaches over an edge of the photo: one side at least only seems to end where the photo does.
 * @param width of the photo, pixels @param height of the photo, pixels
 */
export function isCutOff({ corners }: Outline, width: number, height: number): boolean {
  return [width, height].some((size, axis) =>
    [0, size].some((border) =>
      corners.some((corner, i) =>
        [corner, corners[(i + 1) % 4]!].every((c) => Math.abs(c[axis]! - border) < NEAR * size),
      ),
    ),
  );
}
