import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

type Stored = { id: string; name: string };
const onDisk = async (): Promise<Stored[]> =>
  ((await (await fetch(`${bench.address}/api/jobs`)).json()) as { jobs: Stored[] }).jobs;
const SOON = { timeout: 8000 };
const names = async (): Promise<string[]> => (await onDisk()).map((job) => job.name).sort();

async function openDemo(page: Page): Promise<void> {
  page.setDefaultTimeout(10_000);
  await page.getByRole('button', { name: /Open the demo/ }).tap();
  await page.locator('h1.verdict').waitFor();
}
const rename = async (page: Page, name: string): Promise<void> => {
  await page.goto(`${bench.address}/#/shop`);
  await page.getByLabel('Name of the job').fill(name);
};

test('without the bench the page goes on, keeps everything, and saves when it answers again', async () => {
  const { page, context } = await bench.open('phone');
  await openDemo(page);
  await expect.poll(names, SOON).toContain('School furniture workshop');
  // every place is fetched ahead in a quiet moment
  await page.waitForFunction(() => performance.getEntriesByType('resource').some((one) => /shop-page/.test(one.name)));
  await context.setOffline(true);
  await rename(page, 'Typed in the dark');
  await page.getByText('Kept in this browser. Will be saved when the bench answers again.').waitFor();
  // 90.97 kPa (ISO 2533) over 287.05 J/(kg K) and 297.15 K is 1.067 kg/m³ dry, some 0.6 % less at half humidity
  await page.getByLabel('Height above the sea').fill('900 m');
  await expect.poll(() => page.getByText('So the air weighs').innerText(), SOON).toContain('1.06');
  await context.setOffline(false);
  await expect.poll(names, SOON).toContain('Typed in the dark');
  await expect.poll(() => page.getByText('Kept in this browser.').count(), SOON).toBe(0);
  await context.close();
});

test('a job changed somewhere else is not overwritten unasked', async () => {
  const { page, context } = await bench.open('phone');
  await openDemo(page);
  await rename(page, 'Mine');
  await expect.poll(names, SOON).toContain('Mine');
  const { id } = (await onDisk()).find((job) => job.name === 'Mine')!;
  const other = await (await fetch(`${bench.address}/api/jobs/${id}`)).json();
  await fetch(`${bench.address}/api/jobs/${id}`, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ ...other, name: 'Theirs' }),
  });
  await rename(page, 'Mine again');
  await page.getByText('This job was changed somewhere else since.').waitFor();
  expect(await names()).toContain('Theirs');
  await page.getByRole('button', { name: 'Take the other' }).tap();
  await expect.poll(() => page.getByLabel('Name of the job').inputValue()).toBe('Theirs');
  await page.getByRole('button', { name: 'Undo: the other version' }).tap();
  await expect.poll(() => page.getByLabel('Name of the job').inputValue()).toBe('Mine again');
  await expect.poll(names, SOON).toContain('Mine again');
  await context.close();
});

test('a job goes into a file and comes back from it; a file that is no job is refused in words', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openDemo(page);
  await rename(page, 'For the stick');
  await page.getByRole('button', { name: 'Job menu' }).tap();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).tap(),
  ]);
  expect(download.suggestedFilename()).toBe('For-the-stick.json');
  const saved = JSON.parse(await readFile(await download.path(), 'utf8'));
  expect([saved.format, saved.name]).toEqual(['blower-bench-job', 'For the stick']);

  await page.getByRole('button', { name: 'Job menu' }).tap();
  const file = page.locator('.menu input[type=file]');
  await file.setInputFiles({
    name: 'x.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format": "something else"}'),
  });
  await page.getByRole('alert').waitFor();
  expect(await page.getByRole('alert').innerText()).toContain('This file is not a job.');
  const copy = { ...saved, name: 'From the stick' };
  await file.setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(copy)) });
  await page.locator('h1.verdict').waitFor();
  await expect.poll(names, SOON).toContain('From the stick');

  await page.goto(`${bench.address}/#/jobs`);
  await page.getByRole('button', { name: /^For the stick/ }).tap();
  await page.locator('h1.verdict').waitFor();
  await page.goto(`${bench.address}/#/jobs`);
  await page.getByRole('button', { name: 'Take away From the stick' }).tap();
  await page.getByRole('button', { name: 'Take away', exact: true }).tap();
  await expect.poll(names, SOON).not.toContain('From the stick');
  expect(troubles).toEqual([]);
  await context.close();
});
