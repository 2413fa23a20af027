import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import type { Point } from './touch.ts';

/** The demo's chart photo, what is true of it, and how a visitor gets it onto the stage. */

export type Truth = {
  image: { width: number; height: number };
  chart: {
    axes: { id: string; quantity: string; unit: string; min: number; max: number; siFactor: number }[];
    frameCornersPx: Point[];
    curves: { yAxis: string; quantity: string; speed_rpm: number; points: Point[]; seedPx: Point }[];
  };
};

export const PHOTO = fileURLToPath(new URL('../../fixtures/charts/demo.jpg', import.meta.url));
export const truth = JSON.parse(readFileSync(PHOTO.replace(/\.jpg$/, '.json'), 'utf8')) as Truth;
export const { frameCornersPx, axes, curves } = truth.chart;
/** Time for a slow machine under load; a good one needs a tenth of it. */
export const SOON = { timeout: 10_000 };
/** Time to read a whole chart, on the same machine. */
export const LONG = { timeout: 40_000 };
/** A test in which a chart is read more than once, on the same machine [ms]. */
export const WHOLE = 180_000;

/** Where a pixel of the photo lies on the screen now. */
export async function onScreen(page: Page, [x, y]: Point): Promise<Point> {
  const box = await page.locator('.stage > img').boundingBox();
  if (!box) throw new Error('no photo on the stage');
  const scale = box.width / truth.image.width;
  return [box.x + x * scale, box.y + y * scale];
}

/** As far as the page that takes a photo, from the demo job. */
export async function openPhoto(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Open the demo/ }).tap();
  await page.getByRole('link', { name: 'Blowers' }).tap();
  await page.locator('.candidate-head').first().tap();
  await page.getByRole('button', { name: /Photograph a chart/ }).tap();
}

/** Sends the demo's photo. */
export async function sendPhoto(page: Page): Promise<void> {
  await page.getByLabel(/Choose a picture/).setInputFiles(PHOTO);
  await page.locator('.stage > img').waitFor();
}

/** The largest miss of a traced curve (SI) against the true one (in its axis' units), as a share of that axis' full scale. */
export function worst(traced: Point[], { points }: Truth['chart']['curves'][number], axis: 1 | 2): number {
  const { max, siFactor } = axes[axis]!;
  const true_ = points.map(([q, v]): Point => [q * axes[0]!.siFactor, v * siFactor]);
  const at = (flow: number): number | null => {
    const i = true_.findIndex(([q], k) => k > 0 && true_[k - 1]![0] <= flow && flow <= q);
    if (i < 1) return null;
    const [[q0, v0], [q1, v1]] = [true_[i - 1]!, true_[i]!];
    return v0 + ((v1 - v0) * (flow - q0)) / (q1 - q0 || 1);
  };
  const misses = traced.flatMap(([q, v]) => (at(q) === null ? [] : [Math.abs(v - at(q)!) / (max * siFactor)]));
  return misses.length > 10 ? Math.max(...misses) : Infinity;
}
