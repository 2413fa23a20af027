import { afterAll, beforeAll, expect, test } from 'vitest';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

test.each(['phone', 'desk'] as const)(
  'the page opens on a %s, asks nobody else for anything, and stays within its policy',
  async (window) => {
    const { page, context, troubles } = await bench.open(window);
    await page.locator('#app > *').first().waitFor();
    expect(await page.title()).toContain('Blower Bench');
    expect(troubles).toEqual([]);
    await context.close();
  },
);

test('no page of another address may frame it or call it', async () => {
  const context = await bench.browser.newContext();
  const page = await context.newPage();
  await page.route('http://elsewhere.test/**', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }),
  );
  await page.goto('http://elsewhere.test/');
  const outcome = await page.evaluate(async (address) => {
    const call = (init: RequestInit) =>
      fetch(`${address}/api/jobs/planted`, init).then(
        ({ status, type }) => `${type} ${status}`,
        () => 'no answer',
      );
    return [
      await call({}),
      await call({ mode: 'no-cors', method: 'POST', body: '{}' }),
      await call({ method: 'PUT', body: '{}' }),
    ];
  }, bench.address);
  expect(outcome).toEqual(['no answer', 'no answer', 'no answer']);
  const jobs = await (await fetch(`${bench.address}/api/jobs`)).json();
  expect(jobs).toEqual({ jobs: [], damaged: [] });
  await context.close();
});
