import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import type { Blower, Job } from '../../src/index.ts';
import { broken, sideways, tooSmall } from './checker.ts';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

const photo = (name: string): string => fileURLToPath(new URL(`../../fixtures/plates/${name}.jpg`, import.meta.url));
/** Time for a slow machine under load; a good one needs a tenth of it. */
const SOON = { timeout: 30_000 };
/** Time to read a plate, on the same machine. */
const LONG = { timeout: 90_000 };
/** A whole test, on the same machine [ms]. */
const WHOLE = 240_000;

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

/** As far as the plate's photo on its stage, from the demo job. */
async function sendPlate(page: Page, name: string, blower = 'green'): Promise<void> {
  page.setDefaultTimeout(30_000);
  await page.locator('.welcome .next').first().click();
  await page.locator('h1.verdict').waitFor();
  await page.goto(`${bench.address}/#/blowers/${blower}`);
  await page.getByRole('button', { name: /^(Photograph the plate|پلیٹ کی تصویر لیں)$/ }).click();
  await page.locator('.pick input').last().setInputFiles(photo(name));
  await page.locator('.stage > img').waitFor();
}

const figure = (page: Page, name: string): Locator => page.locator(`#figure-${name}`);
const read = (page: Page): Promise<void> => page.locator('.figures .use').waitFor(LONG);

/** The blower of this page's job as it stands on the server's disk. */
async function onDisk(page: Page, id: string): Promise<Blower> {
  const jobId = await page.evaluate(() => localStorage.getItem('blower-bench-current'));
  const job = (await (await fetch(`${bench.address}/api/jobs/${jobId}`)).json()) as Job;
  return job.blowers.find((blower) => blower.id === id)!;
}

test(
  'the plate of a motor becomes its data: one figure typed anew, a reload in the middle, one step back',
  async () => {
    const { page, context, troubles } = await bench.open('phone');
    await sendPlate(page, 'motor');
    await read(page);
    expect(await figure(page, 'ratedPower_W').getByRole('textbox').inputValue()).toMatch(/^1[.,]5 kW$/);
    // the plate contradicts itself, so something is asked about, each with its print where it was read
    expect(await page.locator('.figure.asked').count()).toBeGreaterThan(0);
    expect(await page.locator('.figure .crop').count()).toBeGreaterThan(4);

    await figure(page, 'current_A').getByRole('textbox').fill('3,2 A');
    await figure(page, 'voltage_V').getByRole('textbox').fill('380');
    await page.keyboard.press('Tab');
    await page.reload();
    await read(page);
    expect(await figure(page, 'current_A').getByRole('textbox').inputValue()).toBe('3,2 A');
    // a figure emptied is left out, whatever was read
    await figure(page, 'powerFactor').getByRole('textbox').fill('');
    for (const button of await page.locator('.figure .confirm[aria-pressed=false]').all()) await button.tap();
    await page.locator('.figures .use').tap();

    await expect.poll(async () => (await onDisk(page, 'green')).motor.current_A, SOON).toBe(3.2);
    const { motor, platePhotoIds } = await onDisk(page, 'green');
    expect(motor).toMatchObject({ ratedPower_W: 1500, speed_rpm: 2829, frequency_Hz: 50, phases: 3, voltage_V: 380 });
    // another power, so another motor: nothing is left of the old one's plate
    expect([motor.powerFactor, motor.efficiency]).toEqual([undefined, undefined]);
    expect(platePhotoIds).toHaveLength(1);
    expect(await page.getByLabel('Current', { exact: true }).inputValue()).toBe('3,2 A');
    await page.getByRole('button', { name: 'Plate photo 1' }).locator('img').waitFor();

    await page.getByRole('button', { name: 'Undo: what the plate says' }).tap();
    await expect.poll(async () => (await onDisk(page, 'green')).motor.ratedPower_W, SOON).toBe(2200);
    const before = await onDisk(page, 'green');
    expect([before.motor.current_A, before.motor.voltage_V, before.platePhotoIds]).toEqual([4.7, 400, undefined]);
    expect(troubles).toEqual([]);
    await context.close();
  },
  WHOLE,
);

test(
  'what is doubted and not looked at stays out of the job',
  async () => {
    const { page, context, troubles } = await bench.open('phone');
    await sendPlate(page, 'blower', 'squirrel-cage');
    await read(page);
    const asked = await page.locator('.figure.asked').evaluateAll((rows) => rows.map((row) => row.id.slice(7)));
    const before = await onDisk(page, 'squirrel-cage');
    await page.locator('.figures .use').tap();
    await expect.poll(async () => (await onDisk(page, 'squirrel-cage')).platePhotoIds?.length, SOON).toBe(1);
    const after = await onDisk(page, 'squirrel-cage');
    const isKept = (name: string, was: unknown, is: unknown): boolean => asked.includes(name) === (was === is);
    expect(isKept('ratedPower_W', before.motor.ratedPower_W, after.motor.ratedPower_W)).toBe(true);
    expect(isKept('wheelDiameter_m', before.wheel.diameter_m, after.wheel.diameter_m)).toBe(true);
    // nobody said how its air is meant: not one point more
    expect(after.evidence).toEqual(before.evidence);
    expect(troubles).toEqual([]);
    await context.close();
  },
  WHOLE,
);

test(
  'a blower’s flow and pressure are asked about and become two points',
  async () => {
    const { page, context, troubles } = await bench.open('phone');
    await sendPlate(page, 'blower');
    await read(page);
    for (const name of ['flow_m3_s', 'pressure_Pa'])
      if ((await figure(page, name).locator('.confirm[aria-pressed=false]').count()) > 0)
        await figure(page, name).locator('.confirm').tap();
    expect(await page.getByRole('radio', { name: /^Each is its largest/ }).getAttribute('aria-checked')).toBe('false');
    await page.getByRole('radio', { name: /^Each is its largest/ }).tap();
    await page.locator('.figures .use').tap();
    const points = async () => (await onDisk(page, 'green')).evidence.filter(({ kind }) => kind === 'rated-point');
    await expect.poll(async () => (await points()).length, SOON).toBe(2);
    const [flow, pressure] = (await points()) as { flow_m3_s: number; pressure_Pa: number; photoId: string }[];
    expect([flow!.pressure_Pa, pressure!.flow_m3_s, pressure!.pressure_Pa]).toEqual([0, 0, 1420]);
    expect(flow!.flow_m3_s).toBeCloseTo(2770 / 3600, 6);
    expect(flow!.photoId).toBe(pressure!.photoId);
    expect(troubles).toEqual([]);
    await context.close();
  },
  WHOLE,
);

test(
  'the reading can be stopped and the plate typed from its photo, and read after all',
  async () => {
    const { page, context, troubles } = await bench.open('phone');
    await sendPlate(page, 'motor');
    await page.getByRole('button', { name: 'Stop, I’ll type it myself' }).tap();
    await figure(page, 'ratedPower_W').getByRole('textbox').fill('2 HP');
    expect(await page.locator('.figure').count()).toBe(6);
    await page.getByRole('button', { name: 'Read it from the photo after all' }).tap();
    await read(page);
    expect(await figure(page, 'ratedPower_W').getByRole('textbox').inputValue()).toBe('2 HP');
    expect(troubles.filter((one) => !one.includes('ERR_ABORTED'))).toEqual([]);
    await context.close();
  },
  WHOLE,
);

describe.each([
  { language: 'en', theme: 'light', window: 'phone' },
  { language: 'ur', theme: 'dark', window: 'phone' },
  { language: 'ur', theme: 'light', window: 'desk' },
] as const)('a plate that was read in $language, $theme, on a $window', ({ language, theme, window }) => {
  test(
    'passes the accessibility checker, fits its width, has room for a fingertip and does not jump',
    async () => {
      const { page, context, troubles } = await bench.open(window);
      await page.evaluate((settings) => localStorage.setItem('blower-bench-settings', JSON.stringify(settings)), {
        language,
        theme,
      });
      await page.reload();
      await sendPlate(page, 'blower');
      await read(page);
      expect(await broken(page)).toEqual([]);
      expect(await sideways(page)).toBeLessThanOrEqual(0);
      if (window === 'phone') expect(await tooSmall(page)).toEqual([]);
      const tops = (): Promise<number[]> =>
        page.locator('.figure').evaluateAll((rows) => rows.map((row) => Math.round((row as HTMLElement).offsetTop)));
      const before = await tops();
      for (const button of await page.locator('.figure .confirm').all()) await button.click();
      expect(await tops()).toEqual(before);
      expect(troubles).toEqual([]);
      await context.close();
    },
    WHOLE,
  );
});
