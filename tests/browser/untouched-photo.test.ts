import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axes, curves, LONG, openPhoto, sendPhoto, SOON, WHOLE, worst } from './demo-photo.ts';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

const axisField = (page: Page, index: number): Locator => page.locator('.axis-fields input').nth(index);

test(
  'a photo of a chart is read without a touch, one curve taken away, and used',
  async () => {
    const { page, context, troubles } = await bench.open('phone');
    await openPhoto(page);
    await sendPhoto(page);
    await page.getByRole('button', { name: /Use these curves/ }).waitFor(LONG);
    const ends = await page
      .locator('.axis-fields input')
      .evaluateAll((inputs) => inputs.map((i) => (i as HTMLInputElement).value));
    expect(ends.map(Number)).toEqual(axes.flatMap(({ min, max }) => [min, max]));
    expect(await page.locator('.stage .on-photo-air').count()).toBe(curves.length);
    expect(await page.getByLabel('Speed written at it (static pressure)').inputValue()).toBe(
      String(curves[0]!.speed_rpm),
    );

    // a scale put right by hand stays so, and the curves follow it
    await axisField(page, 3).fill(String(2 * axes[1]!.max));
    await expect
      .poll(() => page.locator('.axis-ends text').allTextContents(), LONG)
      .toContain(String(2 * axes[1]!.max));
    await axisField(page, 3).fill(String(axes[1]!.max));
    await page.getByRole('button', { name: 'Take away curve 2' }).tap();
    await expect.poll(() => page.locator('.stage .on-photo-air').count(), LONG).toBe(1);
    await page.getByRole('button', { name: 'Use this curve' }).tap();
    await page.locator('.fan-plot .find-ring').first().waitFor();
    await expect
      .poll(async () => {
        const { jobs } = (await (await fetch(`${bench.address}/api/jobs`)).json()) as { jobs: { id: string }[] };
        const job = jobs[0] && (await (await fetch(`${bench.address}/api/jobs/${jobs[0].id}`)).json());
        const chart = job?.blowers[0].evidence.find((e: { photoId?: string }) => e.photoId);
        return chart && [chart.speed_rpm, worst(chart.pressure, curves[0]!, 1) < 0.01, chart.shaftPower];
      }, SOON)
      .toEqual([curves[0]!.speed_rpm, true, null]);
    expect(troubles).toEqual([]);
    await context.close();
  },
  WHOLE,
);
