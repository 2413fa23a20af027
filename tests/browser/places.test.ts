import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';
import { verdictLine } from './touch.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

async function openDemo(page: Page, place: string): Promise<void> {
  page.setDefaultTimeout(15_000);
  await page.locator('.welcome .next').first().click();
  await page.locator('.plans').waitFor();
  await page.evaluate((hash) => (location.hash = hash), place);
}

const broken = async (page: Page): Promise<string[]> => {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    type Result = { violations: { id: string; nodes: { target: string[]; failureSummary: string }[] }[] };
    const checker = (globalThis as unknown as { axe: { run: (where: Document, options: object) => Promise<Result> } })
      .axe;
    const { violations } = await checker.run(document, { resultTypes: ['violations'] });
    return violations.map((v) => `${v.id}: ${v.nodes[0]!.target.join(' ')} ${v.nodes[0]!.failureSummary}`);
  });
};

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

/** Plotly has drawn: its own picture stands under ours. */
const curvesDrawn = (page: Page) => page.locator('.plot-curves .scatterlayer .trace').first().waitFor();

describe.each([
  { language: 'en', theme: 'light' },
  { language: 'ur', theme: 'light' },
  { language: 'en', theme: 'dark' },
] as const)('ducts, match and card in $language, $theme', (choice) => {
  test.each(['phone', 'desk'] as const)('pass the accessibility checker on a %s and fit its width', async (window) => {
    const { page, context, troubles } = await bench.open(window);
    await page.evaluate((settings) => localStorage.setItem('blower-bench-settings', JSON.stringify(settings)), choice);
    await page.reload();
    await openDemo(page, '#/match');
    await curvesDrawn(page);
    for (const place of ['#/match', '#/ducts', '#/card']) {
      await page.evaluate((hash) => (location.hash = hash), place);
      await page.locator({ '#/match': '.match .plot', '#/ducts': 'svg.ducts', '#/card': '.a4' }[place]!).waitFor();
      expect(await broken(page), place).toEqual([]);
      expect(await sideways(page), place).toBe(0);
    }
    expect(troubles).toEqual([]);
    await context.close();
  });
});

test('the sentence stands first, a tap on a plan turns everything to it, a finger on the plot reads it', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openDemo(page, '#/match');
  await curvesDrawn(page);
  expect(await page.locator('h1').innerText()).toMatch(/machine/);
  const plans = page.locator('.plans [role=radio]');
  const last = plans.last();
  await last.tap();
  expect(await last.getAttribute('aria-checked')).toBe('true');
  const name = (await last.innerText()).trim().split(/\s/)[0]!;
  expect(await page.locator('.figures h2').first().innerText()).toContain(name);
  const plot = page.locator('.plot-box');
  await plot.scrollIntoViewIfNeeded();
  await plot.tap({ position: { x: 150, y: 120 } });
  expect(await page.locator('.readout').innerText()).toMatch(/At \d.*m³\/h, blower \d.*mm water/);
  await plot.press('ArrowRight');
  expect(await plot.getAttribute('aria-valuetext')).toMatch(/ducts ask/);
  await context.close();
  expect(troubles).toEqual([]);
});

test('a tapped gate shows its plan, a tapped pipe changes size at once, undo brings it back', async () => {
  const { page, context, troubles } = await bench.open('phone');
  await openDemo(page, '#/ducts');
  const gates = page.getByRole('button', { name: /^Gate of/ });
  const shut = gates
    .filter({ hasNot: page.locator('x') })
    .and(page.getByRole('button', { name: /shut/ }))
    .first();
  const before = await page.locator('.chosen-text').first().innerText();
  await shut.tap();
  await expect.poll(() => page.locator('.chosen-text').first().innerText()).not.toBe(before);
  expect(await page.getByRole('button', { name: /^Gate of.*open/ }).count()).toBeGreaterThan(1);

  await page
    .getByRole('button', { name: /^table saw: .*pipe/ })
    .first()
    .dispatchEvent('click');
  const sizes = page.locator('.sizes [role=radio]');
  const chosen = () => page.locator('.sizes [aria-checked=true] b').innerText();
  const was = await chosen();
  await sizes.last().tap();
  expect(await chosen()).not.toBe(was);
  await page.getByRole('button', { name: /^Undo/ }).tap();
  expect(await chosen()).toBe(was);
  await context.close();
  expect(troubles).toEqual([]);
});

/** One machine straight to the blower: what a new job starts from. */
const BARE = {
  format: 'blower-bench-job',
  version: 1,
  name: 'From nothing',
  site: {},
  supply: {},
  material: 'wood-dust',
  blowers: [
    {
      id: 'b1',
      label: 'found one',
      wheel: { family: 'radial', diameter_m: 0.45 },
      drive: { kind: 'direct' },
      motor: { ratedPower_W: 2200, speed_rpm: 2850, frequency_Hz: 50 },
      evidence: [{ kind: 'wheel' }],
    },
  ],
  ductwork: {
    sections: [
      {
        id: 'machine-1',
        into: 'blower',
        pickup: {},
        elements: [
          { kind: 'entry', entry: 'machine-port', diameter_m: 0.1036 },
          { kind: 'pipe', surface: 'flexible-hose', length_m: 1, diameter_m: 0.1036 },
          { kind: 'pipe', surface: 'drain-pipe', length_m: 3, diameter_m: 0.1036 },
        ],
      },
    ],
    discharge: [],
    exhaust: 'outdoors',
  },
};

test('a shop of three machines, drum, filters and a way out is drawn from nothing by touch', async () => {
  const stored = await fetch(`${bench.address}/api/jobs/from-nothing`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(BARE),
  });
  expect(stored.ok).toBe(true);
  const { page, context, troubles } = await bench.open('phone');
  page.setDefaultTimeout(15_000);
  await page.evaluate(() => localStorage.setItem('blower-bench-current', 'from-nothing'));
  await page.goto(`${bench.address}/#/ducts`);
  await page.reload();
  const drawing = page.locator('svg.ducts');
  await drawing.waitFor();
  const open = (name: string | RegExp) => drawing.getByRole('button', { name }).first().dispatchEvent('click');
  const put = async (kind: string) => {
    await page.getByRole('button', { name: 'Put in' }).tap();
    await page.locator('.kinds').getByRole('button', { name: kind, exact: true }).tap();
  };

  // the machine that is there gets its name and its need
  await open('machine-1');
  await page.getByLabel('What machine').fill('thickness planer');
  await page.getByLabel('Air it needs').fill('380 CFM');
  await expect.poll(() => drawing.locator('text.name').first().textContent()).toContain('planer');

  // two more, each a copy of the branch before
  for (const machine of ['table saw', 'band saw']) {
    await page.getByRole('button', { name: 'Copy this branch' }).tap();
    await page.getByLabel('What machine is it?').fill(machine);
    await page.getByRole('button', { name: 'Put it in' }).tap();
    await page.getByRole('heading', { name: `From the ${machine}` }).waitFor();
  }
  expect(await drawing.getByRole('button', { name: /^Gate of/ }).count()).toBe(3);

  // drum, pipe and filters on the main they share; six filters
  await open(/^main/);
  await put('cyclone or drum');
  await put('straight pipe or hose');
  await put('filters');
  await page.getByLabel('filters side by side').fill('6');
  await expect
    .poll(() => drawing.locator('text.name').allTextContents())
    .toEqual(expect.arrayContaining(['drum', '6 filters']));

  // and a way out behind the blower
  await page.getByRole('button', { name: 'Close' }).tap();
  await open('Way out');
  await put('straight pipe or hose');
  await put('way out into the open');
  await page.getByRole('button', { name: 'Close' }).tap();

  await expect
    .poll(
      async () =>
        ((await (await fetch(`${bench.address}/api/jobs/from-nothing`)).json()) as typeof BARE).ductwork.sections
          .length,
    )
    .toBe(4);
  const job = (await (await fetch(`${bench.address}/api/jobs/from-nothing`)).json()) as {
    ductwork: {
      sections: { id: string; into: string; elements: { kind: string; count?: number }[] }[];
      discharge: unknown[];
    };
  };
  expect(job.ductwork.sections.map((section) => [section.id, section.into])).toEqual([
    ['machine-1', 'main'],
    ['table-saw', 'main'],
    ['band-saw', 'main'],
    ['main', 'blower'],
  ]);
  expect(job.ductwork.sections[3]!.elements.map((element) => element.kind)).toEqual([
    'pipe',
    'cyclone',
    'pipe',
    'filters',
  ]);
  expect(await verdictLine(page)).not.toBe('');
  await page.reload();
  await expect
    .poll(() => drawing.locator('text.name').allTextContents())
    .toEqual(expect.arrayContaining(['6 filters']));
  expect(troubles).toEqual([]);
  await context.close();
});

test('the card prints on one A4 page', async () => {
  const { page, context, troubles } = await bench.open('desk');
  await openDemo(page, '#/card');
  await page.locator('.a4').waitFor();
  const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(/\/Count (\d+)/.exec(printed)![1]).toBe('1');
  // 210 × 297 mm in points of 1/72 inch
  const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(printed)!;
  expect(Number(width)).toBeCloseTo(595, 0);
  expect(Number(height)).toBeCloseTo(842, 0);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.title-block').isVisible()).toBe(false);
  const footer = (await page.locator('.a4 footer').boundingBox())!;
  const paper = (await page.locator('.a4').boundingBox())!;
  expect(footer.y + footer.height).toBeLessThanOrEqual(paper.y + paper.height);
  expect(troubles).toEqual([]);
  await context.close();
});
