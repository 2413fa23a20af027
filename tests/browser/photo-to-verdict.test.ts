import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { axes, curves, frameCornersPx, LONG, onScreen, openPhoto, sendPhoto, SOON, worst } from './demo-photo.ts';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';
import { fingersOn, middleOf, verdictLine } from './touch.ts';

const CORNERS = ['Bottom left corner', 'Bottom right corner', 'Top right corner', 'Top left corner'];

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

const ring = (page: Page, index: number): Locator =>
  page.getByRole('button', { name: CORNERS[index]! }).locator('.ring');
const axisField = (page: Page, index: number): Locator => page.locator('.axis-fields input').nth(index);

/** The plot is looked for by itself; whoever would rather mark it says so, at any time. */
async function markByHand(page: Page): Promise<void> {
  await page
    .getByRole('button', { name: /mark it by hand/i })
    .first()
    .tap();
  await page.getByText('4 to go.').waitFor();
}

/** A finger misses the frame by a few pixels of the screen; the reader moves the corner onto the print. */
async function dragCorner(page: Page, index: number): Promise<void> {
  const fingers = await fingersOn(page);
  const [x, y] = await onScreen(page, frameCornersPx[index]!);
  await fingers.drag(await middleOf(ring(page, index)), [x + 1.5, y - 1]);
}

test('from a photo of a chart to a verdict by hand, on a phone, with a reload in the middle', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openPhoto(page);
  await sendPhoto(page);
  await markByHand(page);
  for (const index of [0, 1]) await dragCorner(page, index);
  await page.getByText('2 to go.').waitFor();

  await page.reload();
  await page.getByText('2 to go.').waitFor();
  for (const index of [2, 3]) await dragCorner(page, index);
  await page.getByText('Corners are on').waitFor();

  await axisField(page, 1).fill(String(axes[0]!.max));
  await axisField(page, 3).fill(String(axes[1]!.max));
  await page.locator('.axis-fields select').nth(0).selectOption(axes[0]!.unit);
  await page.locator('.axis-fields select').nth(1).selectOption(axes[1]!.unit);
  // the curves are found by themselves; a tap says where one is to be followed from, and its speed is typed
  await expect.poll(() => page.locator('.stage .on-photo-air').count(), LONG).toBe(2);
  const curve = curves[0]!;
  const power = curves.find((one) => one.yAxis === 'y2')!;
  await page.evaluate(() => scrollTo(0, 0));
  const [x, y] = await onScreen(page, curve.seedPx);
  await page.touchscreen.tap(x, y + 1);
  await page.getByLabel('Speed written at it (static pressure)').fill(String(curve.speed_rpm));
  await page.getByLabel('Speed written at it (power)').fill(String(curve.speed_rpm));
  await page.reload();
  await expect
    .poll(
      () =>
        page
          .getByLabel(/Speed written at it/)
          .evaluateAll((inputs) => inputs.map((i) => (i as HTMLInputElement).value)),
      LONG,
    )
    .toEqual([curve, power].map(() => String(curve.speed_rpm)));
  expect(await axisField(page, 1).inputValue()).toBe(String(axes[0]!.max));

  await page.getByRole('button', { name: /Use these curves/ }).tap();
  await page.getByRole('heading', { name: 'What you know of it' }).waitFor();
  await page.locator('.fan-plot .find-ring').first().waitFor();
  expect(await verdictLine(page)).toMatch(/^Green paddle-wheel blower: .+\.$/);

  // what went to disk are the curves of the photo, within a hundredth of their scales
  await expect
    .poll(async () => {
      const { jobs } = (await (await fetch(`${bench.address}/api/jobs`)).json()) as { jobs: { id: string }[] };
      const job = jobs[0] && (await (await fetch(`${bench.address}/api/jobs/${jobs[0].id}`)).json());
      const chart = job?.blowers[0].evidence.find((e: { photoId?: string }) => e.photoId);
      return (
        chart && [chart.speed_rpm, worst(chart.pressure, curve, 1) < 0.01, worst(chart.shaftPower, power, 2) < 0.01]
      );
    }, SOON)
    .toEqual([curve.speed_rpm, true, true]);
  expect(troubles).toEqual([]);
  await context.close();
});

test('the phone is turned in the middle of a drag: the corner stays where it was dragged to, and so does all else', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openPhoto(page);
  await sendPhoto(page);
  await markByHand(page);
  await dragCorner(page, 0);
  const fingers = await fingersOn(page);
  const from = await middleOf(ring(page, 2));
  const to = await onScreen(page, frameCornersPx[2]!);
  await fingers.down(from);
  await fingers.move(from, to);
  await page.locator('.lens').waitFor();
  await page.setViewportSize({ width: 844, height: 390 });
  await page.waitForFunction(() => innerWidth > innerHeight);
  await fingers.up();
  await expect.poll(() => page.locator('.lens').count(), SOON).toBe(0);
  await page.getByText('2 to go.').waitFor();
  for (const index of [0, 2]) {
    const [cx, cy] = await middleOf(ring(page, index));
    const [tx, ty] = await onScreen(page, frameCornersPx[index]!);
    expect(Math.hypot(cx - tx, cy - ty)).toBeLessThan(6);
  }
  await page.setViewportSize({ width: 390, height: 844 });
  await page.reload();
  await page.getByText('2 to go.').waitFor();
  expect(troubles).toEqual([]);
  await context.close();
});

test('two fingers zoom the photo, and a step of undo puts a corner back', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openPhoto(page);
  await sendPhoto(page);
  await markByHand(page);
  const before = (await page.locator('.stage > img').boundingBox())!;
  const fingers = await fingersOn(page);
  await fingers.pinch(
    [
      [150, 250],
      [240, 260],
    ],
    [
      [60, 240],
      [330, 270],
    ],
  );
  await expect
    .poll(async () => (await page.locator('.stage > img').boundingBox())!.width, SOON)
    .toBeGreaterThan(2 * before.width);
  await page.getByRole('button', { name: 'Whole photo' }).tap();
  await expect
    .poll(async () => (await page.locator('.stage > img').boundingBox())!.width, SOON)
    .toBeCloseTo(before.width, 0);
  await dragCorner(page, 3);
  await page.getByText('3 to go.').waitFor();
  await page.getByRole('button', { name: 'Undo: corner of the chart' }).tap();
  await page.getByText('4 to go.').waitFor();
  expect(troubles).toEqual([]);
  await context.close();
});

test('a file that is no picture is refused in plain words, and a picture can be chosen right after', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openPhoto(page);
  const choose = page.getByLabel(/Choose a picture/);
  await choose.setInputFiles({
    name: 'chart.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from('not a picture at all'),
  });
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.innerText()).toContain(
    'This file is not a picture that can be read here. Take JPEG, PNG or WebP.',
  );
  await sendPhoto(page);
  expect(troubles.filter((one) => !one.includes('415'))).toEqual([]);
  await context.close();
});
