/** How much ink lies on each pixel of a small piece of a picture: 0 bare paper, 1 a full stroke. Row by row. */
export type InkPatch = { readonly width: number; readonly height: number; readonly ink: Float32Array };

/** The smallest box with all pixels of at least `least` ink, far sides exclusive; null on bare paper. */
export function inkBox(
  { width, height, ink }: InkPatch,
  least = 0.4,
): { x0: number; y0: number; x1: number; y1: number } | null {
  let [x0, y0, x1, y1] = [width, height, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (ink[y * width + x]! >= least) {
        if (x < x0) x0 = x;
        if (x >= x1) x1 = x + 1;
        if (y < y0) y0 = y;
        if (y >= y1) y1 = y + 1;
      }
  return x1 > x0 ? { x0, y0, x1, y1 } : null;
}
