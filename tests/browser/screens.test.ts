import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { broken, sideways, tooSmall } from './checker.ts';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

/** Time for a slow machine under load; a good one needs a tenth of it. */
const SOON = { timeout: 10_000 };

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

const SCREENS = [
  '#/blowers',
  '#/blowers/new',
  '#/blowers/green',
  '#/blowers/green/photo/new',
  '#/blowers/green/plate/new',
  '#/blowers/green/readings/1',
  '#/blowers/green/readings/1/sheet/new',
  '#/shop',
  '#/settings',
  '#/jobs',
  '#/jobs/new/1',
  '#/jobs/new/4',
];
type Choice = { language: 'en' | 'ur'; theme: 'light' | 'dark' };

async function withSettings(page: Page, choice: Choice): Promise<void> {
  await page.evaluate((settings) => localStorage.setItem('blower-bench-settings', JSON.stringify(settings)), choice);
  await page.reload();
}

async function openDemo(page: Page): Promise<void> {
  await page.locator('.welcome .next').first().click();
  await page.locator('.places').waitFor();
}

test('the checker itself sees a picture without words and a button without a name', async () => {
  const { page, context } = await bench.open('phone');
  await page.locator('main').waitFor();
  await page.evaluate(() =>
    document.querySelector('main')?.insertAdjacentHTML('beforeend', '<img src="/icon.svg"><button></button>'),
  );
  expect((await broken(page)).map((line) => line.split(':')[0])).toEqual(
    expect.arrayContaining(['image-alt', 'button-name']),
  );
  await context.close();
});

describe.each<Choice>([
  { language: 'en', theme: 'light' },
  { language: 'ur', theme: 'light' },
  { language: 'en', theme: 'dark' },
])('every screen in $language, $theme', (choice) => {
  test('passes the accessibility checker on a phone, fits its width, and has no target smaller than a fingertip', async () => {
    const { page, context, troubles } = await bench.open('phone');
    page.setDefaultTimeout(10_000);
    await withSettings(page, choice);
    expect(await broken(page)).toEqual([]);
    await openDemo(page);
    await page.locator('h1.verdict').waitFor();
    for (const screen of SCREENS) {
      await page.goto(`${bench.address}/${screen}`);
      await page.locator('h1').first().waitFor();
      await page.waitForTimeout(150);
      expect([screen, await broken(page)]).toEqual([screen, []]);
      expect([screen, await sideways(page)]).toEqual([screen, 0]);
      expect([screen, await tooSmall(page)]).toEqual([screen, []]);
    }
    expect(troubles).toEqual([]);
    await context.close();
  });
});

test('on a desk ducts and match stand side by side, candidates beside the one that is open, and nothing is wider than the window', async () => {
  const { page, context, troubles } = await bench.open('desk');
  await openDemo(page);
  await page.getByRole('region', { name: 'Ducts' }).waitFor();
  await page.getByRole('region', { name: 'Match' }).waitFor();
  expect(await page.locator('.places a[aria-current]').allInnerTexts()).toEqual(['Ducts', 'Match']);
  for (const screen of SCREENS) {
    await page.goto(`${bench.address}/${screen}`);
    await page.locator('h1').first().waitFor();
    await page.waitForTimeout(100);
    expect([screen, await sideways(page)]).toEqual([screen, 0]);
    expect([screen, await broken(page)]).toEqual([screen, []]);
  }
  await page.goto(`${bench.address}/#/blowers`);
  await page.locator('.candidate').nth(1).locator('.candidate-head').click();
  expect(await page.locator('.candidate').nth(1).getAttribute('aria-current')).toBe('true');
  expect(await page.locator('.candidate').count()).toBe(2);
  expect(troubles).toEqual([]);
  await context.close();
});

test('a field being typed stays above the phone’s keyboard, and the title block makes room', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openDemo(page);
  await page.goto(`${bench.address}/#/shop`);
  const field = page.getByLabel('Motor reserve');
  await field.focus();
  await page.setViewportSize({ width: 390, height: 430 });
  await page.locator('html.typing').waitFor();
  const box = (await field.boundingBox())!;
  expect(box.y).toBeGreaterThan(0);
  expect(box.y + box.height).toBeLessThan(430);
  expect(await page.locator('.title-block').isVisible()).toBe(false);
  await field.blur();
  await expect.poll(() => page.locator('.title-block').isVisible(), SOON).toBe(true);
  expect(troubles).toEqual([]);
  await context.close();
});

test('language, units and digits are the user’s own and survive a reload', async () => {
  const { page, context, troubles } = await bench.open('phone');
  page.setDefaultTimeout(10_000);
  await openDemo(page);
  await page.goto(`${bench.address}/#/settings`);
  await page.getByLabel('Lengths').selectOption('in');
  await page.goto(`${bench.address}/#/blowers/green`);
  await expect.poll(() => page.getByLabel('Wheel across').inputValue(), SOON).toMatch(/in$|mm$/);
  await page.goto(`${bench.address}/#/settings`);
  await page.getByRole('radio', { name: 'اردو' }).tap();
  await page.getByRole('radio', { name: '۰۱۲۳' }).tap();
  await page.reload();
  expect(await page.locator('html').getAttribute('dir')).toBe('rtl');
  await page.goto(`${bench.address}/#/blowers`);
  await expect.poll(async () => /[۰-۹]/.test(await page.locator('main').innerText()), SOON).toBe(true);
  expect(troubles).toEqual([]);
  await context.close();
});
