import type { Raster } from '../../../src/chart/index.ts';

export type Xy = readonly [number, number];
export type Rgb = readonly [number, number, number];

/** A sheet of paper to draw test charts on, pixel by pixel, so that the truth is known without any camera. */
export class Paper implements Raster {
  readonly rgb: Uint8Array;
  readonly width: number;
  readonly height: number;

  constructor(width: number, height: number, colour: Rgb = [240, 238, 230]) {
    this.width = width;
    this.height = height;
    this.rgb = new Uint8Array(width * height * 3);
    for (let i = 0; i < this.rgb.length; i++) this.rgb[i] = colour[i % 3]!;
  }

  /** A smooth-edged line through points, `dash` as lengths of ink and gap along it. */
  line(points: readonly Xy[], width: number, colour: Rgb = [20, 20, 20], dash: Xy | null = null): this {
    let gone = 0;
    for (let k = 1; k < points.length; k++) {
      const [a, b] = [points[k - 1]!, points[k]!];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const at = gone;
      gone += length;
      const isInk = (along: number) => !dash || (at + along) % (dash[0] + dash[1]) < dash[0];
      this.#stroke(a, b, length, width, colour, isInk);
    }
    return this;
  }

  ring([cx, cy]: Xy, radius: number, colour: Rgb = [20, 20, 20]): this {
    const points = Array.from({ length: 41 }, (_, k): Xy => [
      cx + radius * Math.cos(k * 0.157),
      cy + radius * Math.sin(k * 0.157),
    ]);
    return this.line(points, 1.6, colour);
  }

  /** The same grain on every run. */
  grain(amplitude: number): this {
    let state = 1;
    for (let i = 0; i < this.rgb.length; i++) {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      this.rgb[i] = Math.max(0, Math.min(255, this.rgb[i]! + amplitude * ((state >>> 8) / 8388608 - 1)));
    }
    return this;
  }

  #stroke(a: Xy, b: Xy, length: number, width: number, colour: Rgb, isInk: (along: number) => boolean): void {
    const reach = width / 2 + 1;
    const [dx, dy] = length > 0 ? [(b[0] - a[0]) / length, (b[1] - a[1]) / length] : [1, 0];
    for (
      let y = Math.max(0, Math.floor(Math.min(a[1], b[1]) - reach));
      y <= Math.min(this.height - 1, Math.max(a[1], b[1]) + reach);
      y++
    )
      for (
        let x = Math.max(0, Math.floor(Math.min(a[0], b[0]) - reach));
        x <= Math.min(this.width - 1, Math.max(a[0], b[0]) + reach);
        x++
      ) {
        const along = Math.min(length, Math.max(0, (x - a[0]) * dx + (y - a[1]) * dy));
        const distance = Math.hypot(x - a[0] - along * dx, y - a[1] - along * dy);
        const cover = Math.min(1, Math.max(0, width / 2 + 0.5 - distance));
        if (cover === 0 || !isInk(along)) continue;
        for (let c = 0; c < 3; c++) {
          const i = (y * this.width + x) * 3 + c;
          this.rgb[i] = Math.min(this.rgb[i]!, this.rgb[i]! + cover * (colour[c]! - this.rgb[i]!));
        }
      }
  }
}

/** A boxed plot on paper: where its frame is, and a way from chart values to pixels. */
export const FRAME = { left: 120, top: 80, right: 1080, bottom: 720 } as const;
export const CORNERS: [Xy, Xy, Xy, Xy] = [
  [FRAME.left, FRAME.bottom],
  [FRAME.right, FRAME.bottom],
  [FRAME.right, FRAME.top],
  [FRAME.left, FRAME.top],
];

/** Flow 0..4 m³/s, pressure 0..1000 Pa. */
export const onPaper = (flow: number, pressure: number): Xy => [
  FRAME.left + (flow / 4) * (FRAME.right - FRAME.left),
  FRAME.bottom - (pressure / 1000) * (FRAME.bottom - FRAME.top),
];

export const curvePath = (pressure: (flow: number) => number, from: number, to: number): Xy[] =>
  Array.from({ length: 241 }, (_, k) => {
    const flow = from + ((to - from) * k) / 240;
    return onPaper(flow, pressure(flow));
  });

/** Frame and grid lines at every half m³/s and every 100 Pa. */
export function boxedPaper(grid: Rgb | null = [190, 195, 195]): Paper {
  const paper = new Paper(1200, 800);
  if (grid) {
    for (let q = 0.5; q < 4; q += 0.5) paper.line([onPaper(q, 0), onPaper(q, 1000)], 1.2, grid);
    for (let p = 100; p < 1000; p += 100) paper.line([onPaper(0, p), onPaper(4, p)], 1.2, grid);
  }
  return paper.line([...CORNERS, CORNERS[0]], 2.4);
}
