import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

async function openBlower(page: Page): Promise<void> {
  page.setDefaultTimeout(15_000);
  await page.locator('.welcome .next').first().click();
  await page.locator('.plans').waitFor();
  await page.evaluate(() => (location.hash = '#/blowers/green'));
  await page.locator('.worst-day .load').first().waitFor();
}

const broken = async (page: Page): Promise<string[]> => {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    type Result = { violations: { id: string; nodes: { target: string[]; failureSummary: string }[] }[] };
    const checker = (globalThis as unknown as { axe: { run: (where: string) => Promise<Result> } }).axe;
    const { violations } = await checker.run('.worst-day');
    return violations.map((v) => `${v.id}: ${v.nodes[0]!.target.join(' ')} ${v.nodes[0]!.failureSummary}`);
  });
};

describe.each([
  { language: 'en', theme: 'light' },
  { language: 'ur', theme: 'dark' },
] as const)('the motor on its worst day in $language, $theme', (choice) => {
  test.each(['phone', 'desk'] as const)('stands on the page of a blower and fits a %s', async (window) => {
    const { page, context, troubles } = await bench.open(window);
    await page.evaluate((settings) => localStorage.setItem('blower-bench-settings', JSON.stringify(settings)), choice);
    await page.reload();
    await openBlower(page);
    expect(await page.locator('.worst-day .load').count()).toBe(3);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await broken(page)).toEqual([]);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

test('a long thin cable, typed on the phone, shows what it takes and raises the amps', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openBlower(page);
  const lowest = page.locator('.worst-day .fact').first();
  expect(await lowest.locator('dt').textContent()).toMatch(/^At 350.V$/);
  await page.locator('summary').filter({ hasText: 'Cable' }).tap();
  await page.getByLabel('Cable from board to motor').fill('80 m');
  await page.getByLabel('Cross-section of one wire').fill('1 mm²');
  await page.keyboard.press('Tab');
  const cable = page.locator('.worst-day .fact').filter({ hasText: 'of the volts arrive in the start' });
  await cable.waitFor();
  expect(await cable.locator('b').textContent()).toMatch(/^takes \d+(\.\d)?.V \(\d+.%\)$/);
  expect(await lowest.locator('dt').textContent()).toMatch(/^At 34\d.V$/);
  expect(troubles).toEqual([]);
  await context.close();
});

test('a three-phase motor on one phase is told what is left of it, and an inverter mends it', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openBlower(page);
  await page.evaluate(() => (location.hash = '#/shop'));
  await page
    .getByRole('radio', { name: /one phase|1 phase|single/i })
    .first()
    .tap();
  await page.evaluate(() => (location.hash = '#/blowers/green'));
  const said = page.locator('.motor-said');
  await said.getByText(/only 40 % to 60 % of its plate/).waitFor();
  await page.getByRole('radio', { name: 'an inverter' }).tap();
  await said.getByText(/only 40 % to 60 % of its plate/).waitFor({ state: 'detached' });
  expect(troubles).toEqual([]);
  await context.close();
});

// US DOE motor tip sheet, recalled: 462, 463 and 455 V are 1.1 % apart.
test('three voltages off a meter become their unbalance', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openBlower(page);
  await page.locator('summary').filter({ hasText: 'Cable' }).tap();
  await page.getByLabel('Lines 1 and 2').fill('462');
  await page.getByLabel('Lines 2 and 3').fill('463');
  await page.getByLabel('Lines 3 and 1').fill('4');
  expect(await page.getByLabel('Uneven voltages').inputValue()).toBe('');
  await page.getByLabel('Lines 3 and 1').fill('455');
  await page.keyboard.press('Tab');
  await page
    .locator('.motor-said')
    .getByText(/The three voltages differ by 1/)
    .waitFor();
  expect(await page.getByLabel('Uneven voltages').inputValue()).toMatch(/^1(\.09\d*|\.1)?.?%?$/);
  expect(troubles).toEqual([]);
  await context.close();
});
