import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import type { Job, ReadingsEvidence } from '../../src/index.ts';
import { broken, sideways, tooSmall } from './checker.ts';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

const SHEET = fileURLToPath(new URL('../../fixtures/plates/sheet.jpg', import.meta.url));
/** Time for a slow machine under load; a good one needs a tenth of it. */
const SOON = { timeout: 30_000 };
/** Time to read a sheet, on the same machine. */
const LONG = { timeout: 90_000 };
/** A whole test, on the same machine [ms]. */
const WHOLE = 240_000;
const MM_WATER = 9.80665;

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

/** The readings of this page's job as they stand on the server's disk. */
async function notebook(page: Page): Promise<ReadingsEvidence> {
  const jobId = await page.evaluate(() => localStorage.getItem('blower-bench-current'));
  const job = (await (await fetch(`${bench.address}/api/jobs/${jobId}`)).json()) as Job;
  return job.blowers[0]!.evidence[1] as ReadingsEvidence;
}

/** As far as the sheet's table, from the demo job's readings. */
async function sendSheet(page: Page): Promise<void> {
  page.setDefaultTimeout(30_000);
  await page.locator('.welcome .next').first().click();
  await page.locator('h1.verdict').waitFor();
  await page.goto(`${bench.address}/#/blowers/green/readings/1`);
  await page.getByRole('button', { name: /^(Photograph the sheet|کاغذ کی تصویر لیں)$/ }).click();
  await page.locator('.pick input').last().setInputFiles(SHEET);
  await page.locator('.sheet-table').waitFor(LONG);
}

test(
  'a sheet written by hand becomes rows after those that are there, with what was doubted looked at',
  async () => {
    const { page, context, troubles } = await bench.open('phone');
    await sendSheet(page);
    const before = await notebook(page);
    // hole, tube, flow, amps: five rows, each figure under its print
    expect(await page.locator('.sheet-table tbody tr').count()).toBe(5);
    expect(await page.locator('.sheet-cell .crop').count()).toBe(20);
    const box = page.locator('.doubt-box');
    // whatever the tube was read as in the third row, it is 180.1
    await page.locator('.sheet-table tbody tr').nth(2).locator('.sheet-cell').nth(1).tap();
    await box.getByRole('textbox').fill('180,1');
    await box.getByRole('button', { name: 'That is right' }).tap();

    await page.reload();
    await page.locator('.sheet-table').waitFor(LONG);
    expect(await page.locator('.sheet-table tbody tr').nth(2).innerText()).toContain('180,1');
    // the air flow has a hole beside it that tells it better: told to be a number, it is left on the photo
    await page.locator('.sheet-table thead button').nth(2).tap();
    await box.getByRole('combobox').first().selectOption('opening');
    await box.getByRole('button', { name: 'That is right' }).tap();
    for (let i = 0; i < 12 && (await box.count()) > 0; i += 1)
      await box.getByRole('button', { name: 'That is right' }).tap();
    await page.getByRole('button', { name: /^Add 5 rows to the readings/ }).tap();

    await expect.poll(async () => (await notebook(page)).rows.length, SOON).toBe(before.rows.length + 5);
    const after = await notebook(page);
    expect(after.rows.slice(0, before.rows.length)).toEqual(before.rows);
    const added = after.rows.slice(before.rows.length);
    expect(added.map(({ orificeDiameter_m: hole }) => Math.round(1000 * hole!))).toEqual([0, 6, 10, 13, 16]);
    expect(added[0]!.staticPressure_Pa).toBeCloseTo(205.2 * MM_WATER, 6);
    expect(added[2]!.staticPressure_Pa).toBeCloseTo(180.1 * MM_WATER, 6);
    expect(added[0]!.voltage_V).toBe(223);
    expect(after.photoId).toBeTruthy();
    // the pipe of the notebook was known already
    expect(after.rig.pipeDiameter_m).toBe(before.rig.pipeDiameter_m);

    await page.getByRole('button', { name: 'Undo: readings from the sheet' }).tap();
    await expect.poll(async () => (await notebook(page)).rows.length, SOON).toBe(before.rows.length);
    expect(troubles).toEqual([]);
    await context.close();
  },
  WHOLE,
);

test.each([
  { language: 'en', theme: 'dark' },
  { language: 'ur', theme: 'light' },
] as const)(
  'the sheet that was read passes the checker and fits a phone in $language, $theme',
  async (choice) => {
    const { page, context, troubles } = await bench.open('phone');
    await page.evaluate((settings) => localStorage.setItem('blower-bench-settings', JSON.stringify(settings)), choice);
    await page.reload();
    await sendSheet(page);
    expect(await broken(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(await tooSmall(page)).toEqual([]);
    expect(troubles).toEqual([]);
    await context.close();
  },
  WHOLE,
);
