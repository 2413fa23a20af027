import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Case, Mend, Settling } from '../../../src/assessment.ts';
import { checkJob, judge } from '../../../src/index.ts';
import type { Job, Section } from '../../../src/job/types.ts';
import { withMends } from '../../../src/advice/mends.ts';
import { resizedRun } from '../../../src/duct/index.ts';
import { formatQuantity } from '../../../src/units/format.ts';
import { TRADE_SIZES } from '../../../src/pipe/index.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../fixtures/jobs/school-furniture.json', import.meta.url), 'utf8'),
) as Job;

/** Few draws: the chances play no part here. */
const DRAWS = 16;

const branch = (id: string, diameter_m = 0.1, more: Partial<Section> = {}): Section => ({
  id,
  into: 'main',
  pickup: { machine: id.replace('-', ' ') },
  gate: {},
  elements: [
    { kind: 'entry', entry: 'flanged', diameter_m },
    { kind: 'pipe', surface: 'galvanised-duct', length_m: 3, diameter_m },
  ],
  ...more,
});

/** A shop of the demo's paddle-wheel blower: branches into one main, each machine alone. */
function shop(main_m: number, branches: Section[], plans: string[][] = branches.map(({ id }) => [id])): Job {
  const checked = checkJob({
    ...demo,
    blowers: [demo.blowers[0]],
    ductwork: {
      sections: [
        ...branches,
        {
          id: 'main',
          label: 'the main',
          into: 'blower',
          elements: [{ kind: 'pipe', surface: 'galvanised-duct', length_m: 8, diameter_m: main_m }],
        },
      ],
      discharge: [{ kind: 'exit', diameter_m: 0.2 }],
    },
    gatePlans: plans.map((open) => ({ name: open.join(' + '), open })),
    asTyped: {},
  });
  if (!checked.ok) throw new Error(checked.issues[0]!.message);
  return checked.value;
}

/** Numbers and their units hang together by a space that does not break. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const speed = (m_s: number) => plain(formatQuantity(m_s, 'm/s'));
const casesOf = (job: Job): Case[] => withMends(job, judge(job, DRAWS));
const settlingIn = (job: Job, plan: string): Settling => casesOf(job).find((one) => one.gatePlan === plan)!.settling!;
const mend = (settling: Settling, kind: Mend['kind']): Mend | undefined =>
  settling.mends.find((one) => one.kind === kind);

/** The slow runs of a case, as the whole program judges them. */
const slowIn = (job: Job, open: string[]): string[] => {
  const plans = [{ name: 'tried', open }];
  const [one] = judge({ ...job, gatePlans: plans }, DRAWS).assessment.cases;
  return one!.sections.filter((section) => section.judged && !section.ok).map(({ id }) => id);
};

const resized = (job: Job, sizes: Mend['sizes']): Job => ({
  ...job,
  ductwork: {
    ...job.ductwork,
    sections: job.ductwork.sections.map((section) => {
      const widths = new Map(sizes.filter(({ id }) => id === section.id).map(({ from_m, to_m }) => [from_m, to_m]));
      return { ...section, elements: resizedRun(section.elements, widths) };
    }),
  },
});

describe('one branch of 100 mm into a main of 210 mm', () => {
  const job = shop(0.21, [branch('planer'), branch('table-saw', 0.16), branch('band-saw', 0.16)]);
  const settling = settlingIn(job, 'planer');

  test('dust settles in the main, and the sentence has the numbers', () => {
    const [run, ...others] = settling.runs;
    expect(others).toEqual([]);
    expect(run).toMatchObject({ id: 'main', minimumVelocity_m_s: 20 });
    const judged = judge(job, DRAWS).assessment.cases.find((one) => one.gatePlan === 'planer')!;
    const { velocity_m_s } = judged.sections.find(({ id }) => id === 'main')!;
    expect(run!.velocity_m_s).toBeCloseTo(velocity_m_s!, 6);
    expect(plain(settling.text)).toBe(`Dust settles: ${speed(velocity_m_s!)} in the main, ${speed(20)} needed.`);
  });

  test('the fewest gates to open are named, and no fewer would do', () => {
    const { gates, runs, loadFraction, text } = mend(settling, 'open-gates')!;
    expect(slowIn(job, ['planer', ...gates])).toEqual([]);
    expect(gates).toHaveLength(1);
    expect(runs[0]!.velocity_m_s).toBeGreaterThan(20);
    const said = `Open also the ${gates[0]!.replace('-', ' ')}: ${speed(runs[0]!.velocity_m_s)} in the main.`;
    expect(loadFraction).toBeGreaterThan(1);
    expect(plain(text)).toBe(`${said} The motor would carry ${Math.round(100 * loadFraction!)} % of its rating.`);
  });

  test('the widest size sold that carries the dust is named, and a size wider would not', () => {
    const { sizes, runs, text } = mend(settling, 'smaller-pipe')!;
    expect(sizes).toHaveLength(1);
    expect(slowIn(resized(job, sizes), ['planer'])).toEqual([]);
    const { sizes: sold } = TRADE_SIZES.find(({ family }) => family === 'sheet')!;
    const wider = sold[sold.findIndex(({ name }) => name === sizes[0]!.size) + 1]!;
    expect(wider.inside_m).toBeLessThan(0.21);
    expect(slowIn(resized(job, [{ ...sizes[0]!, to_m: wider.inside_m }]), ['planer'])).toEqual(['main']);
    expect(plain(text)).toBe(
      `Build the main in ${sizes[0]!.size} (${1000 * sizes[0]!.to_m} mm inside) instead of 210 mm: ${speed(runs[0]!.velocity_m_s)} in the main.`,
    );
  });

  test('nothing needs to be shut where one gate is open', () => {
    expect(mend(settling, 'shut-gates')).toBeUndefined();
  });
});

test('where one more gate is not enough, two are named', () => {
  const job = shop(0.2, [
    branch('planer', 0.08),
    branch('table-saw', 0.1),
    branch('band-saw', 0.1),
    branch('lathe', 0.1),
  ]);
  const { gates } = mend(settlingIn(job, 'planer'), 'open-gates')!;
  expect(gates.length).toBeGreaterThan(1);
  expect(slowIn(job, ['planer', ...gates])).toEqual([]);
  for (const id of ['table-saw', 'band-saw', 'lathe']) expect(slowIn(job, ['planer', id])).not.toEqual([]);
});

describe('more machines open than the blower can serve', () => {
  const many = ['planer', 'table-saw', 'band-saw', 'lathe', 'router'];
  const job = shop(
    0.2,
    many.map((id) => branch(id, 0.125)),
    [many],
  );
  const settling = settlingIn(job, many.join(' + '));

  test('the fewest gates to shut are named', () => {
    const { gates, runs } = mend(settling, 'shut-gates')!;
    const open = many.filter((id) => !gates.includes(id));
    expect(slowIn(job, open)).toEqual([]);
    // one gate fewer shut: every way of it leaves dust somewhere
    for (const id of gates) expect(slowIn(job, [...open, id])).not.toEqual([]);
    expect(runs.map(({ id }) => id)).not.toContain(gates[0]);
  });

  test('no gate is opened: all are', () => {
    expect(mend(settling, 'open-gates')).toBeUndefined();
  });
});

test('a slow branch of its own machine is not mended by other gates', () => {
  const job = shop(0.1, [branch('planer', 0.16), branch('table-saw', 0.1)]);
  const settling = settlingIn(job, 'planer');
  expect(settling.runs.map(({ id }) => id)).toEqual(['planer']);
  expect(mend(settling, 'open-gates')).toBeUndefined();
  expect(mend(settling, 'smaller-pipe')!.sizes.map(({ id }) => id)).toEqual(['planer']);
});

test('who then has too little air is said, and such a mend comes last', () => {
  const need = { pickup: { machine: 'planer', requiredFlow_m3_s: 0.3 } };
  const job = shop(0.2, [branch('planer', 0.125, need), branch('table-saw', 0.16), branch('band-saw', 0.16)]);
  const settling = settlingIn(job, 'planer');
  const opened = mend(settling, 'open-gates')!;
  expect(opened.short).toMatchObject([{ id: 'planer', requiredFlow_m3_s: 0.3 }]);
  expect(plain(opened.text)).toMatch(/ The planer then gets \d+ m³\/h and needs 1,080 m³\/h\./);
  expect(settling.mends[0]!.kind).toBe('smaller-pipe');
});

test('a blower too weak for any of it is called that', () => {
  const long = branch('planer', 0.16, {
    elements: [{ kind: 'pipe', surface: 'flexible-hose', length_m: 400, diameter_m: 0.1016 }],
  });
  const settling = settlingIn(shop(0.16, [long]), 'planer');
  expect(settling.mends).toEqual([]);
  expect(plain(settling.text)).toMatch(/ Neither gates nor a smaller pipe mend that: it takes a stronger blower\.$/);
});

test('where nothing settles there is nothing to mend', () => {
  const job = shop(0.1, [branch('planer'), branch('table-saw')]);
  expect(casesOf(job).map(({ settling }) => settling)).toEqual([null, null]);
});
