import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

/** Time for a slow machine under load; a good one needs a tenth of it. */
const SOON = { timeout: 20_000 };

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

const remark = (page: Page) => page.locator('.readings-table .row-remarks');

test('a decimal slip is named under its row, stays while the next figure is typed, and goes when it is mended', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await page.getByRole('button', { name: /Open the demo/ }).tap();
  await page.locator('h1.verdict').waitFor();
  await page.goto(`${bench.address}/#/blowers/green/readings/1`);
  const tube = page.getByLabel('Tube, reading 5', { exact: true });
  await tube.waitFor();
  expect(await remark(page).count()).toBe(0);

  await tube.fill('25.7');
  await expect.poll(() => remark(page).innerText(), SOON).toMatch(/decimal/i);
  const doubted = await page.locator('.readings-table tr.doubted').count();
  expect(doubted).toBe(1);
  expect(await page.locator('.readings-table tr.doubted input').nth(1).inputValue()).toBe('25.7');

  // watched at every change of the page: it never vanishes while another figure is typed
  await page.evaluate(() => {
    const seen = { gone: 0 };
    new MutationObserver(() => {
      if (!document.querySelector('.row-remarks')) seen.gone++;
    }).observe(document.body, { childList: true, subtree: true });
    Object.assign(window, { seen });
  });
  await page.getByLabel('Motor, reading 7', { exact: true }).fill('4.5');
  await page.waitForTimeout(1500);
  expect(await page.evaluate(() => (window as unknown as { seen: { gone: number } }).seen.gone)).toBe(0);

  await tube.fill('257');
  await expect.poll(() => remark(page).count(), SOON).toBe(0);
  expect(troubles).toEqual([]);
  await context.close();
});

test('the same in Urdu', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await page.getByText('اردو').first().tap();
  await page.getByRole('button', { name: /نمونہ/ }).first().tap();
  await page.locator('h1.verdict').waitFor();
  await page.goto(`${bench.address}/#/blowers/green/readings/1`);
  await page.locator('.readings-table tbody tr').nth(4).locator('input').nth(1).fill('25.7');
  await expect.poll(() => remark(page).innerText(), SOON).toMatch(/اعشار/);
  // it fits the phone
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(troubles).toEqual([]);
  await context.close();
});
