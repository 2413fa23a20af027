const CELL = 24;
/** Of the pixels of a cell, the share that is lighter than what is taken for its paper. */
const LIGHTER = 0.3;
const BLACK = 4;
const LOG = Float32Array.from({ length: 256 }, (_, i) => 100 * Math.log(i + BLACK));

/**
 * Light of the bare paper over a grey picture, by cells, and the ink on it: 100 · ln(paper / pixel), 0..255.
 * Source: definition (Beer–Lambert: what ink takes is a share, so shadow cancels).
 */
export function barePaper(
  grey: Uint8Array,
  width: number,
  height: number,
): { ink: Uint8Array; paperAt: (x: number, y: number) => number } {
  const columns = Math.ceil(width / CELL);
  const rows = Math.ceil(height / CELL);
  const raw = new Float32Array(columns * rows);
  const counts = new Uint16Array(256);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      counts.fill(0);
      let n = 0;
      for (let y = r * CELL; y < Math.min(height, (r + 1) * CELL); y++)
        for (let x = c * CELL + (y & 1), i = y * width + x; x < Math.min(width, (c + 1) * CELL); x += 2, i += 2, n++)
          counts[grey[i]!]!++;
      let left = LIGHTER * n;
      let level = 255;
      while (level > 0 && (left -= counts[level]!) > 0) level--;
      raw[r * columns + c] = level;
    }
  const paper = raw.map((_, k) => medianAround(raw, columns, rows, k % columns, Math.floor(k / columns)));
  const logs = paper.map((v) => 100 * Math.log(v + BLACK));
  const ink = new Uint8Array(width * height);
  const line = new Float32Array(columns);
  for (let y = 0, i = 0; y < height; y++) {
    const [r, below, fy] = between(y, rows);
    for (let c = 0; c < columns; c++) {
      const a = logs[r * columns + c]!;
      line[c] = a + (logs[below * columns + c]! - a) * fy;
    }
    for (let x = 0; x < width; x++, i++) {
      const g = (x + 0.5) / CELL - 0.5;
      const c = g < 0 ? 0 : g | 0;
      const d = c + 1 < columns ? c + 1 : c;
      const f = g < 0 ? 0 : g - c;
      const v = line[c]! + (line[d]! - line[c]!) * f - LOG[grey[i]!]!;
      ink[i] = v <= 0 ? 0 : v >= 255 ? 255 : v;
    }
  }
  const paperAt = (x: number, y: number) => {
    const [r, below, fy] = between(y, rows);
    const [c, right, fx] = between(x, columns);
    const top = paper[r * columns + c]! * (1 - fx) + paper[r * columns + right]! * fx;
    const bottom = paper[below * columns + c]! * (1 - fx) + paper[below * columns + right]! * fx;
    return top + (bottom - top) * fy;
  };
  return { ink, paperAt };
}

/** The two cells a pixel lies between, and how far it is on the way to the second. */
function between(at: number, cells: number): readonly [number, number, number] {
  const g = Math.min(cells - 1, Math.max(0, (at + 0.5) / CELL - 0.5));
  const first = Math.floor(g);
  return [first, Math.min(cells - 1, first + 1), g - first];
}

function medianAround(raw: Float32Array, columns: number, rows: number, c: number, r: number): number {
  const near: number[] = [];
  for (let y = Math.max(0, r - 1); y <= Math.min(rows - 1, r + 1); y++)
    for (let x = Math.max(0, c - 1); x <= Math.min(columns - 1, c + 1); x++) near.push(raw[y * columns + x]!);
  near.sort((a, b) => a - b);
  return near[near.length >> 1]!;
}
