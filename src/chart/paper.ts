/** Colour of the bare paper by square cells of a picture, three numbers 0..255 a cell; near 255 means glare. */
export type PaperLight = {
  readonly columns: number;
  readonly rows: number;
  /** side of a cell, pixels */
  readonly cell: number;
  readonly colours: Float32Array;
};

const CELL = 16;
/** The lightest quarter of a cell is taken for paper: a dense grid leaves about that much bare. */
const BARE = 0.25;

/**
 * The paper's light over a picture. A cell full of ink takes the paper of the cells around it (median of nine).
 * @param colours three bytes a pixel
 */
export function paperLight(colours: Uint8Array, width: number, height: number): PaperLight {
  const columns = Math.ceil(width / CELL);
  const rows = Math.ceil(height / CELL);
  const raw = new Float32Array(columns * rows * 3);
  const counts = new Uint16Array(3 * 256);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      counts.fill(0);
      let n = 0;
      // every other pixel, as on a chessboard, tells as much
      for (let y = r * CELL; y < Math.min(height, (r + 1) * CELL); y++) {
        const to = (y * width + Math.min(width, (c + 1) * CELL)) * 3;
        for (let i = (y * width + c * CELL + (y & 1)) * 3; i < to; i += 6, n++) {
          counts[colours[i]!]!++;
          counts[256 + colours[i + 1]!]!++;
          counts[512 + colours[i + 2]!]!++;
        }
      }
      for (let k = 0; k < 3; k++) {
        let left = BARE * n;
        let level = 255;
        while (level > 0 && (left -= counts[256 * k + level]!) > 0) level--;
        raw[(r * columns + c) * 3 + k] = level;
      }
    }
  const colour = new Float32Array(raw.length);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      for (let k = 0; k < 3; k++) colour[(r * columns + c) * 3 + k] = medianAround(raw, columns, rows, c, r, k);
  return { columns, rows, cell: CELL, colours: colour };
}

const near = new Float32Array(9);

function medianAround(raw: Float32Array, columns: number, rows: number, c: number, r: number, k: number): number {
  let n = 0;
  for (let y = Math.max(0, r - 1); y <= Math.min(rows - 1, r + 1); y++)
    for (let x = Math.max(0, c - 1); x <= Math.min(columns - 1, c + 1); x++) {
      const v = raw[(y * columns + x) * 3 + k]!;
      let i = n++;
      for (; i > 0 && near[i - 1]! > v; i--) near[i] = near[i - 1]!;
      near[i] = v;
    }
  return near[n >> 1]!;
}

/** Keeps the logarithm of black finite, and noise in the dark small. */
const BLACK = 4;
const LOG = Float32Array.from({ length: 256 }, (_, i) => 100 * Math.log(i + BLACK));

/**
 * Ink on the paper: 100 · ln(paper / pixel) for each channel, the mean of the three, and where a
 * pixel is lighter than the paper, by how much.
 * Source: definition (Beer–Lambert: what ink takes is a share, so shadow cancels).
 */
export function inkOn(
  colours: Uint8Array,
  width: number,
  height: number,
  { columns, rows, cell, colours: paper }: PaperLight,
): { ink: Uint8Array; darkness: Uint8Array; lightness: Uint8Array } {
  const logPaper = paper.map((v) => 100 * Math.log(v + BLACK));
  const ink = new Uint8Array(colours.length);
  const darkness = new Uint8Array(width * height);
  const lightness = new Uint8Array(width * height);
  const line = new Float32Array(3 * columns + 3);
  for (let y = 0, i = 0, o = 0; y < height; y++) {
    const gy = Math.min(rows - 1, Math.max(0, (y + 0.5) / cell - 0.5));
    const r = Math.min(rows - 1, gy | 0);
    const below = Math.min(rows - 1, r + 1);
    for (let c = 0; c < 3 * columns; c++) {
      const a = logPaper[r * 3 * columns + c]!;
      line[c] = a + (logPaper[below * 3 * columns + c]! - a) * (gy - r);
    }
    for (let k = 0; k < 3; k++) line[3 * columns + k] = line[3 * columns - 3 + k]!;
    for (let x = 0; x < width; x++, i += 3, o++) {
      const gx = Math.min(columns - 1, Math.max(0, (x + 0.5) / cell - 0.5));
      const c = gx | 0;
      const f = gx - c;
      const p = 3 * c;
      const red = line[p]! + (line[p + 3]! - line[p]!) * f - LOG[colours[i]!]!;
      const green = line[p + 1]! + (line[p + 4]! - line[p + 1]!) * f - LOG[colours[i + 1]!]!;
      const blue = line[p + 2]! + (line[p + 5]! - line[p + 2]!) * f - LOG[colours[i + 2]!]!;
      const a = red <= 0 ? 0 : red >= 255 ? 255 : red | 0;
      const b = green <= 0 ? 0 : green >= 255 ? 255 : green | 0;
      const d = blue <= 0 ? 0 : blue >= 255 ? 255 : blue | 0;
      ink[i] = a;
      ink[i + 1] = b;
      ink[i + 2] = d;
      darkness[o] = ((a + b + d) * 0.3334) | 0;
      const more = red + green + blue;
      if (more < 0) lightness[o] = more < -765 ? 255 : (-more / 3) | 0;
    }
  }
  return { ink, darkness, lightness };
}
