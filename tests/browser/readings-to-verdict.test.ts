import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';
import { verdictLine } from './touch.ts';

/** Time for a slow machine under load; a good one needs a tenth of it. */
const SOON = { timeout: 10_000 };

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

/** A straight test pipe of 153.6 mm with holes in a board, as a radial wheel of 0.49 m at 2,930 rpm might read on it. */
const ROWS = [
  ['45', '314', '2960', '2.9'],
  ['60 mm', '308', '2950', '3.3'],
  ['90', '242 mm WG', '2930', '4,3'],
] as const;

const typeInto = (page: Page, label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);
const goOn = (page: Page) => page.getByRole('button', { name: 'Go on' }).tap();

test('from nothing to a verdict by readings, on a phone, with a reload in the middle', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await page.getByRole('button', { name: /Start a job of your own/ }).tap();

  await typeInto(page, 'Name of the job', 'Shed by the river');
  await typeInto(page, 'Height above the sea', '1850 m');
  await page.getByText('So the air weighs').waitFor();
  await goOn(page);
  await page.getByRole('radio', { name: 'three-phase' }).tap();
  await typeInto(page, 'Voltage', '400');
  await goOn(page);
  await typeInto(page, 'Machine', 'planer');
  await typeInto(page, 'Air it needs', '500 m3/h');
  await typeInto(page, 'Hose', '2');
  await goOn(page);
  await page.getByRole('radio', { name: /Paddle wheel/ }).tap();
  await typeInto(page, 'Power on the plate', '3 HP');
  await page.reload();
  expect(await page.getByLabel('Power on the plate').inputValue()).toBe('3 HP');
  expect(await page.getByRole('radio', { name: /Paddle wheel/ }).getAttribute('aria-checked')).toBe('true');
  await page.getByRole('button', { name: 'Put it on the bench' }).tap();

  await typeInto(page, 'Wheel across', '49 cm');
  await page.getByText('490 mm', { exact: true }).waitFor();
  await page.getByRole('button', { name: /Test it/ }).tap();
  await page.getByRole('radio', { name: /Far from the hole/ }).tap();
  await typeInto(page, 'Pipe, inside', '153.6 mm');
  for (const [index, [hole, tube, speed, amps]] of ROWS.entries()) {
    const row = index + 1;
    await typeInto(page, `Hole, reading ${row}`, hole);
    await typeInto(page, `Tube, reading ${row}`, tube);
    await typeInto(page, `Speed, reading ${row}`, speed);
    await typeInto(page, `Motor, reading ${row}`, amps);
  }
  // the curve has grown a point for each reading
  await expect.poll(() => page.locator('.fan-plot .find-disc').count(), SOON).toBe(3);
  expect(await page.locator('.fan-plot .curve').getAttribute('d')).toMatch(/^M/);

  // a reading whose tube is not read yet is half typed: it has to survive as well
  await typeInto(page, 'Hole, reading 4', '120');
  await page.reload();
  await page.getByLabel('Hole, reading 4').waitFor();
  expect(await page.getByLabel('Hole, reading 4').inputValue()).toBe('120');
  expect(await page.getByLabel('Tube, reading 3').inputValue()).toBe('242 mm WG');
  expect(await page.getByLabel('Motor, reading 3').inputValue()).toBe('4,3');
  await typeInto(page, 'Tube, reading 4', '130');
  await expect.poll(() => page.locator('.fan-plot .find-disc').count(), SOON).toBe(4);

  // undo takes the last reading back, and brings it again
  await page.getByRole('button', { name: 'Undo: reading' }).tap();
  await expect.poll(() => page.locator('.fan-plot .find-disc').count(), SOON).toBe(3);
  await page.getByRole('button', { name: 'Do again: reading' }).tap();
  await expect.poll(() => page.locator('.fan-plot .find-disc').count(), SOON).toBe(4);

  expect(await verdictLine(page)).toMatch(
    /^(Strong enough|Not strong enough|Not sure yet|Not with|Not at|Not on|One machine|The air)/,
  );
  await page.getByRole('link', { name: 'Match' }).tap();
  await page.locator('h1.verdict').waitFor();
  expect(await page.locator('h1.verdict').innerText()).toMatch(/\.$/);

  // the valid job is on disk, readings and words as typed
  await expect
    .poll(async () => {
      const { jobs } = (await (await fetch(`${bench.address}/api/jobs`)).json()) as {
        jobs: { id: string; name: string }[];
      };
      const entry = jobs.find((job) => job.name === 'Shed by the river');
      if (!entry) return null;
      const job = await (await fetch(`${bench.address}/api/jobs/${entry.id}`)).json();
      return [
        job.blowers[0].evidence[0].rows.length,
        job.asTyped['/blowers/0/motor/ratedPower_W'],
        job.site.altitude_m,
      ];
    }, SOON)
    .toEqual([4, '3 HP', 1850]);
  expect(troubles).toEqual([]);
  await context.close();
});

test('a field says what it does not understand, keeps the text, and the last answer stays', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await page.getByRole('button', { name: /Open the demo/ }).tap();
  await page.locator('h1.verdict').waitFor();
  const before = await page.locator('h1.verdict').innerText();
  await page.goto(`${bench.address}/#/shop`);
  const field = page.getByLabel('Height above the sea');
  await field.fill('18 bananas');
  await page.getByText('“bananas” is no unit known here.').waitFor();
  await page.reload();
  expect(await page.getByLabel('Height above the sea').inputValue()).toBe('18 bananas');
  await page.getByLabel('Height above the sea').fill('99 km');
  await page.locator('.amiss').first().waitFor();
  await page.getByRole('link', { name: 'Match' }).tap();
  expect(await page.locator('h1.verdict').innerText()).toBe(before);
  await page.goto(`${bench.address}/#/shop`);
  await page.getByLabel('Height above the sea').fill('٢٠٠ m');
  await page.getByText('656', { exact: false }).first().waitFor();
  expect(await page.locator('.amiss').count()).toBe(0);
  expect(troubles).toEqual([]);
  await context.close();
});
