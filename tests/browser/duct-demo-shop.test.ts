import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { assess } from '../../src/index.ts';
import { elementKind } from '../../src/duct/index.ts';
import type { Element } from '../../src/duct/index.ts';
import type { Job, Section } from '../../src/job/types.ts';
import { fieldsOf, nameLabel } from '../../web/ducts/fields.ts';
import { valueAt } from '../../web/state/pointer.ts';
import { startBrowser } from './launch.ts';
import type { Bench } from './launch.ts';

const DEMO = JSON.parse(
  readFileSync(new URL('../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'),
) as Job;

let bench: Bench;
beforeAll(async () => {
  bench = await startBrowser();
});
afterAll(() => bench.stop());

/** The demo's site and blowers with the ducts of a new job: one machine on a hose, and no way out. */
const NOTHING = {
  ...DEMO,
  asTyped: {},
  gatePlans: undefined,
  ductwork: {
    sections: [
      {
        id: 'machine-1',
        into: 'blower',
        pickup: {},
        elements: [{ kind: 'pipe', surface: 'flexible-hose', length_m: 1, diameter_m: 0.1 }],
      },
    ],
    discharge: [],
    exhaust: 'outdoors',
  },
};

/** What somebody would type into a field, in another unit than the job keeps. */
const asTyped = (value: number, quantity: string): string => {
  if (quantity === 'length') return `${Number((value * 1000).toPrecision(6))} mm`;
  if (quantity === 'flow') return `${Number((value * 3600).toPrecision(9))} m3/h`;
  if (quantity === 'pressure') return `${value} Pa`;
  if (quantity === 'area') return `${Number((value * 1e6).toPrecision(6))} mm2`;
  if (quantity === 'fraction') return `${Number((value * 100).toPrecision(6))} %`;
  if (quantity === 'mass') return `${value} kg`;
  return String(value);
};

/** Draws runs by touch on the page; `kinds` is what stands in the run that is open. */
function fingers(page: Page) {
  const drawing = page.locator('svg.ducts');
  const form = page.locator('.piece-form');
  const showRest = async () => {
    const rest = form.locator('details:not([open]) summary');
    if (await rest.count()) await rest.tap();
  };
  const openPiece = async (index: number) => {
    const piece = page.locator('.pieces > ol > li').nth(index);
    if (!/open/.test((await piece.getAttribute('class')) ?? '')) await piece.locator('.piece').tap();
    await form.waitFor();
  };
  const openIndex = () =>
    page.locator('.pieces > ol > li').evaluateAll((items) => items.findIndex((one) => one.classList.contains('open')));

  async function fill(element: Element) {
    for (const row of fieldsOf(element.kind)) {
      const value = valueAt(element, `/${row.path}`);
      if (value === undefined) continue;
      const input = form.getByLabel(row.label, { exact: true }).first();
      if (!(await input.isVisible())) await showRest();
      if (row.input === 'choice') await input.selectOption({ label: nameLabel(row.path, String(value)) });
      else await input.fill(asTyped(Number(value), row.input === 'quantity' ? row.quantity : ''));
    }
  }
  return {
    drawing,
    open: (name: string | RegExp) => drawing.getByRole('button', { name }).first().dispatchEvent('click'),
    openPiece,
    /** Makes the open run what `target` says: pieces that are of the right kind are changed in place, others put in. */
    async draw(target: readonly Element[], kinds: string[]) {
      for (const [index, element] of target.entries()) {
        if (kinds[index] === element.kind) await openPiece(index);
        else {
          const count = kinds.length;
          await page.getByRole('button', { name: 'Put in' }).tap();
          const kind = page
            .locator('.kinds')
            .getByRole('button', { name: elementKind(element.kind).label, exact: true });
          await kind.tap();
          await expect.poll(() => page.locator('.pieces > ol > li').count()).toBe(count + 1);
          for (let at = await openIndex(); at !== index; at = await openIndex()) {
            await form.getByRole('button', { name: at > index ? 'Earlier' : 'Later' }).tap();
          }
          kinds.splice(index, 0, element.kind);
        }
        await fill(element);
      }
      while (kinds.length > target.length) {
        await openPiece(kinds.length - 1);
        await form.getByRole('button', { name: 'Take away' }).tap();
        kinds.pop();
      }
    },
  };
}

/** A ductwork without its names: every section by what it is and what it flows into, numbers as somebody would read them. */
function bare({ sections, discharge, exhaust }: Job['ductwork']): unknown {
  const place = (id: string): unknown => {
    const section = sections.find((one) => one.id === id);
    return section ? pieces(section) : id;
  };
  const pieces = ({ elements, pickup, gate, into }: Section): unknown => ({
    elements,
    pickup,
    gate,
    into: place(into),
  });
  const round = (_: string, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(7)) : value);
  const sorted = sections.filter((section) => section.pickup).map((section) => pieces(section));
  const byName = (value: unknown) => (value as { pickup: { machine: string } }).pickup.machine;
  sorted.sort((a, b) => byName(a).localeCompare(byName(b)));
  return JSON.parse(JSON.stringify({ sorted, discharge, exhaust }, round));
}

test('the whole demo shop is drawn from nothing by touch, and gives the same flows', { timeout: 180_000 }, async () => {
  const address = `${bench.address}/api/jobs/demo-from-nothing`;
  const headers = { 'content-type': 'application/json' };
  expect((await fetch(address, { method: 'PUT', headers, body: JSON.stringify(NOTHING) })).ok).toBe(true);
  const { page, context, troubles } = await bench.open('phone');
  page.setDefaultTimeout(10_000);
  await page.evaluate(() => localStorage.setItem('blower-bench-current', 'demo-from-nothing'));
  await page.goto(`${bench.address}/#/ducts`);
  await page.reload();
  const finger = fingers(page);
  await finger.drawing.waitFor();
  const wanted = (id: string): Section => DEMO.ductwork.sections.find((section) => section.id === id)!;
  const kindsOf = (id: string): string[] => wanted(id).elements.map((element) => element.kind);

  const machine = async (id: string) => {
    const { pickup, gate } = wanted(id);
    await page.getByLabel('What machine').fill(pickup!.machine!);
    await page.getByLabel('Air it needs').fill(asTyped(pickup!.requiredFlow_m3_s!, 'flow'));
    const rest = page.locator('.machine-fields > details:not([open]) summary');
    if (await rest.count()) await rest.tap();
    await page.getByLabel('What it makes').selectOption(pickup!.material ?? '');
    await page.getByLabel('Leak when shut').fill(asTyped(gate!.closedLeakArea_m2!, 'area'));
  };
  const copyAs = async (name: string) => {
    await page.getByRole('button', { name: 'Copy this branch' }).tap();
    await page.getByLabel('What machine is it?').fill(name);
    await page.getByRole('button', { name: 'Put it in' }).tap();
    await page.getByRole('heading', { name: `From the ${name}` }).waitFor();
  };

  // the machine that is there becomes the planer; the others start as copies
  await finger.open('machine-1');
  await page.locator('.machine-fields').getByRole('radio', { name: 'yes' }).tap();
  await machine('planer');
  await finger.draw(wanted('planer').elements, ['pipe']);
  await copyAs('band saw');
  await machine('band-saw');
  await finger.draw(wanted('band-saw').elements, kindsOf('planer'));
  await copyAs('table saw');
  await machine('table-saw');
  await finger.draw(wanted('table-saw').elements, kindsOf('band-saw'));
  await page.getByRole('button', { name: 'Close' }).tap();

  // the main: along the wall, then on to drum, filters and blower; the table saw joins in between
  await finger.open(/^main/i);
  await finger.draw([...wanted('main-1').elements, ...wanted('main-2').elements], ['pipe']);
  await finger.openPiece(0);
  await page.getByRole('button', { name: 'Let a branch join behind it' }).tap();
  await page.getByRole('button', { name: 'Close' }).tap();
  await finger.open(/^table saw: .*pipe/);
  await page.getByLabel('flows into').selectOption('main');
  await page.getByRole('button', { name: 'Close' }).tap();

  await finger.open('Way out');
  await finger.draw(DEMO.ductwork.discharge ?? [], []);

  const stored = async () => (await (await fetch(address)).json()) as Job;
  await expect.poll(async () => bare((await stored()).ductwork), { timeout: 10_000 }).toEqual(bare(DEMO.ductwork));

  const drawn = await stored();
  const same: Record<string, string> = {};
  for (const { id, pickup } of DEMO.ductwork.sections) {
    if (pickup) same[id] = drawn.ductwork.sections.find((one) => one.pickup?.machine === pickup.machine)!.id;
  }
  const gatePlans = DEMO.gatePlans!.map((plan) => ({ ...plan, open: plan.open.map((id) => same[id]!) }));
  const [ours, theirs] = [assess({ ...drawn, gatePlans }), assess(DEMO)];
  expect(ours.cases.length).toBe(theirs.cases.length);
  for (const [i, one] of theirs.cases.entries()) {
    for (const { id, flow_m3_s } of one.pickups) {
      const found = ours.cases[i]!.pickups.find((pickup) => pickup.id === same[id])!.flow_m3_s!;
      expect(Math.abs(found - flow_m3_s!), `${one.gatePlan} ${id}`).toBeLessThanOrEqual(0.005 * Math.abs(flow_m3_s!));
    }
  }
  expect(troubles).toEqual([]);
  await context.close();
});
