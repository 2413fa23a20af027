import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

/** Time for a slow machine under load; a good one needs a tenth of it. */
const SOON = { timeout: 10_000 };

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

async function openReadings(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Open the demo/ }).click();
  await page.locator('h1.verdict').waitFor();
  await page.goto(`${bench.address}/#/blowers/green/readings/1`);
  const fold = page.locator('.before-test');
  await fold.waitFor();
  if ((await fold.getAttribute('open')) === null) await fold.locator('summary').click();
  await page.locator('.plan-table tbody tr').first().waitFor();
}

test('the plan of holes goes into the table, and each row enters the job once its tube is read', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openReadings(page);
  const before = await page.locator('.readings-table tbody tr').count();
  const planned = page.locator('.plan-table tbody tr:not(.taken)');
  const missing = await planned.count();
  expect(missing).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Put these holes into the table' }).tap();
  await expect.poll(() => page.locator('.readings-table tbody tr.waiting').count(), SOON).toBe(missing);
  const disc = await page.locator('.fan-plot .find-disc').count();
  await page.getByLabel(`Tube, reading ${before}`, { exact: true }).fill('262');
  await expect.poll(() => page.locator('.fan-plot .find-disc').count(), SOON).toBe(disc + 1);
  expect(await page.locator('.readings-table tbody tr.waiting').count()).toBe(Math.max(1, missing - 1));
  expect(troubles).toEqual([]);
  await context.close();
});

test('the holes are printed at true size: in print one millimetre of the drawing is one of paper', async () => {
  const { page, context, troubles } = await bench.open('desk');
  await openReadings(page);
  const holes = await page.locator('.plan-table tbody tr td:nth-child(2)').allInnerTexts();
  const sawn = holes.map(Number).filter((mm) => mm > 0);
  await page.getByRole('button', { name: 'Print them at true size' }).click();
  await page.locator('svg.hole-sheet').waitFor();
  await page.emulateMedia({ media: 'print' });
  // CSS: 96 px are one inch of paper
  const mm = 96 / 25.4;
  const widths = await page
    .locator('.hole-sheet .hole')
    .evaluateAll((all) =>
      all.map(
        (circle) => 2 * (circle as SVGCircleElement).r.baseVal.value * (circle as SVGGraphicsElement).getScreenCTM()!.a,
      ),
    );
  expect(widths.map((px) => Math.round((px / mm) * 100) / 100)).toEqual([...sawn].sort((a, b) => a - b));
  const rule = await page.locator('.hole-sheet .ruler').evaluate((line) => {
    const { width } = (line as SVGGraphicsElement).getBBox();
    return width * (line as SVGGraphicsElement).getScreenCTM()!.a;
  });
  expect(rule / mm).toBeCloseTo(100, 1);
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(1);
  // A4 is 595.3 × 841.9 points
  expect(/\/MediaBox \[0 0 (59[45]\.\d+) (84[12]\.\d+)\]/.test(pdf)).toBe(true);

  await page.emulateMedia({ media: null });
  await page.getByRole('radio', { name: 'one sheet for each board' }).click();
  const each = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(each.match(/\/Type \/Page\b/g)).toHaveLength(sawn.length);
  expect(troubles).toEqual([]);
  await context.close();
});

test('flashes of the energy meter become watts of a reading; a wide table scrolls by itself, not the page', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openReadings(page);
  await page.locator('.flashes summary').tap();
  await page.getByLabel('Flashes counted').fill('20');
  await page.getByLabel('In', { exact: true }).fill('40');
  await page.getByLabel('Printed: imp/kWh').fill('800');
  await page.getByRole('button', { name: 'Put the watts into reading 3' }).tap();
  // 20 flashes are 20/800 kWh = 90 kJ, in 40 s
  await expect.poll(() => page.getByLabel('Power in, reading 3').inputValue(), SOON).toBe('2.25');
  const { page: whole, screen } = await page.evaluate(() => ({
    page: document.documentElement.scrollWidth,
    screen: innerWidth,
  }));
  expect(whole).toBe(screen);
  expect(screen).toBe(390);
  expect(troubles).toEqual([]);
  await context.close();
});
