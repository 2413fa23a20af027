import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { form, json, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';

/** Three readings of one page, on a slow machine [ms]. */
const WHOLE = 240_000;

const [WIDTH, HEIGHT, LEFT] = [1500, 2000, 260];
const [LONG, HIGH] = [1100, 640];

/** One plot of a page: a grid with numbers, units, and a falling line. */
function plot(top: number, flowMost: number, pressureMost: number): string {
  const x = (share: number) => LEFT + LONG * share;
  const y = (share: number) => top + HIGH * (1 - share);
  const steps = [0, 0.2, 0.4, 0.6, 0.8, 1];
  const grid = steps.map((s) => `M${x(s)} ${y(0)}V${y(1)}M${x(0)} ${y(s)}H${x(1)}`).join('');
  const curve = Array.from({ length: 41 }, (_, k) => `${x(0.05 + k / 50)} ${y(0.8 - 0.6 * (k / 40) ** 2)}`);
  return `<path d="${grid}" stroke="#999" stroke-width="2"/>
    <path d="M${x(0)} ${y(0)}V${y(1)}H${x(1)}V${y(0)}Z" stroke="#000" stroke-width="4" fill="none"/>
    <path d="M${curve.join('L')}" stroke="#000" stroke-width="5" fill="none"/>
    ${steps.map((s) => `<text x="${x(s)}" y="${y(0) + 46}" text-anchor="middle">${flowMost * s}</text><text x="${x(0) - 16}" y="${y(s) + 12}" text-anchor="end">${pressureMost * s}</text>`).join('')}
    <text x="${x(0.5)}" y="${y(0) + 100}" text-anchor="middle">Volume flow [m³/h]</text>
    <text transform="translate(${x(0) - 130} ${y(0.5)}) rotate(-90)" text-anchor="middle">Static pressure [Pa]</text>`;
}

const page = (plots: string): Promise<Buffer> =>
  sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" font-family="DejaVu Sans" font-size="34"><rect width="100%" height="100%" fill="#f4f1e8"/>${plots}</svg>`,
    ),
  )
    .jpeg({ quality: 92 })
    .toBuffer();

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

async function read(photoId: string, hints: unknown = {}) {
  const answer = await bench.call(`/api/photos/${photoId}/chart`, json('POST', hints));
  const { confidence, warnings, otherFrames_px, axes } = JSON.parse(answer.text);
  return {
    needsReview: confidence?.needsReview,
    codes: warnings?.map(({ code }: { code: string }) => code),
    others: otherFrames_px ?? [],
    most: axes?.map(({ max }: { max: number }) => max),
  };
}
const send = async (jpeg: Buffer): Promise<string> =>
  JSON.parse((await bench.call('/api/photos', form('photo', jpeg))).text).photoId;

test(
  'of two charts on a page one is read, the other offered, and somebody asked; told which, nobody is asked',
  { timeout: WHOLE },
  async () => {
    const photoId = await send(await page(plot(120, 5000, 1000) + plot(1060, 2000, 500)));
    const first = await read(photoId);
    expect(first.codes).toContain('several-charts');
    expect(first.needsReview).toBe(true);
    expect(first.others).toHaveLength(1);
    const other = await read(photoId, { frameCorners_px: first.others[0] });
    expect(other.codes).not.toContain('several-charts');
    expect([first.most, other.most].toSorted((a, b) => a[0] - b[0])).toEqual([
      [2000, 500],
      [5000, 1000],
    ]);
    const alone = await read(await send(await page(plot(500, 5000, 1000))));
    expect(alone.codes).not.toContain('several-charts');
    expect(alone.most).toEqual([5000, 1000]);
  },
);
