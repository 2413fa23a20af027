import { describe, expect, test } from 'vitest';
import { checkCurveRequest, checkJob } from '../../../src/job/check.ts';
import type { Issue, Result } from '../../../src/issues/result.ts';
import { smallJob, smallJobWith } from './small-job.ts';

const issuesOf = (result: Result<unknown>): Issue[] => (result.ok ? [] : result.issues);

const pipe = '/ductwork/sections/0/elements/1';
const chart = '/blowers/0/evidence/0';

describe('a job that is understood and possible', () => {
  test('comes back as it was sent', () => {
    const result = checkJob(smallJob());
    expect(result.ok && result.value).toEqual(smallJob());
  });

  test('may leave out or null whatever is not required', () => {
    expect(checkJob(smallJobWith('/gatePlans', null)).ok).toBe(true);
    expect(checkJob(smallJobWith('/blowers/0/wheel/diameter_m', null)).ok).toBe(true);
    expect(checkJob(smallJobWith(`${chart}/shaftPower`, undefined)).ok).toBe(true);
  });

  test('may call its sections by the names of an object’s inner workings', () => {
    const job = smallJob();
    job.ductwork.sections[0]!.id = 'constructor';
    job.gatePlans[0]!.open = ['constructor'];
    expect(checkJob(job).ok).toBe(true);
  });
});

describe('what is not understood', () => {
  test.each([
    ['/name', undefined, '/name', 'name is missing: give text in quotes.'],
    ['/site', undefined, '/site', 'site is missing: give an object, { … }.'],
    ['/version', 2, '/version', 'version 2 is not known; it must be 1.'],
    ['/format', 'job', '/format', 'format "job" is not known; it must be blower-bench-job.'],
    ['/material', 'wood dust', '/material', 'material "wood dust" is not known; did you mean "wood-dust"?'],
    [
      '/material',
      'gold',
      '/material',
      'material "gold" is not known; it must be one of wood-shavings, wood-dust, metal-grinding, textile-lint, light-powder.',
    ],
    ['/supply/phases', 2, '/supply/phases', 'phases 2 is not known; it must be one of 1, 3.'],
    [
      `${pipe}/length_m`,
      '2 m',
      `${pipe}/length_m`,
      'length (length_m) must be a number in metres; "2 m" is text. Write the bare number, without quotes and without a unit.',
    ],
    [`${pipe}/length_m`, undefined, `${pipe}/length_m`, 'length (length_m) is missing: give a number in metres.'],
    [`${pipe}/length_m`, null, `${pipe}/length_m`, 'length (length_m) is missing: give a number in metres.'],
    [`${pipe}/length_m`, [2], `${pipe}/length_m`, 'length (length_m) must be a number in metres; [2] was given.'],
    [`${pipe}/length_m`, Infinity, `${pipe}/length_m`, 'length (length_m) is too large to be a number.'],
    [`${pipe}/kind`, 'pipes', `${pipe}/kind`, 'kind "pipes" is not known; did you mean "pipe"?'],
    [
      `${pipe}/kind`,
      undefined,
      `${pipe}/kind`,
      'kind is missing: it must be one of pipe, entry, fitting, branch-entry, gate, reducer, cyclone, filters, fixed-resistance, exit.',
    ],
    [
      `${pipe}/diameter_mm`,
      125,
      `${pipe}/diameter_mm`,
      'diameter_mm is not a field here: this document takes metres, as diameter_m.',
    ],
    [
      '/site/altitude',
      1850,
      '/site/altitude',
      'altitude is not a field here: this document takes metres, as altitude_m.',
    ],
    [
      '/site/airTemprature_C',
      24,
      '/site/airTemprature_C',
      'airTemprature_C is not a field here; did you mean airTemperature_C?',
    ],
    [
      '/supply/colour',
      'red',
      '/supply/colour',
      'colour is not a field here; these are: voltage_V, lowestVoltage_V, frequency_Hz, phases, voltageUnbalance.',
    ],
    ['/a~1b', 1, '/a~01b', 'a~1b is not a field here; these are: '],
    [
      `${chart}/pressure/1`,
      [0.2],
      `${chart}/pressure/1`,
      'entry 1 of pressure must be a pair, [flow, value]; [0.2] was given.',
    ],
    [
      `${chart}/pressure/1`,
      [0.2, 3, 4],
      `${chart}/pressure/1`,
      'entry 1 of pressure must be a pair, [flow, value]; [0.2,3,4] was given.',
    ],
    ['/ductwork/sections', {}, '/ductwork/sections', 'sections must be a list, [ … ]; an object was given.'],
    [
      '/blowers/0/wheel/bladeCount',
      7.5,
      '/blowers/0/wheel/bladeCount',
      'blades (bladeCount) must be a whole number; 7.5 was given.',
    ],
  ])('%s = %j', (pointer, value, path, sentence) => {
    const issues = issuesOf(checkJob(smallJobWith(pointer, value)));
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ code: 'not-understood', path });
    expect(issues[0]!.message).toContain(sentence);
  });

  test.each([[null], [undefined], ['job'], [[]], [3]])('the document itself is %j', (raw) => {
    const [issue] = issuesOf(checkJob(raw));
    expect(issue).toMatchObject({ code: 'not-understood', path: '' });
    expect(issue!.message).toMatch(/^the document (must be|is missing: give) an object, \{ … \}/);
  });

  test.each(['', '"site":', '"asTyped":', '"requirement":'])('__proto__ inside %j', (where) => {
    const text = JSON.stringify(smallJob());
    const inner = where === '' ? `"__proto__": {"ok": true}` : `${where} {"__proto__": {"ok": true}}`;
    const [issue] = issuesOf(checkJob(JSON.parse(`${text.slice(0, -1)}, ${inner}}`)));
    expect(issue).toMatchObject({ code: 'not-understood', message: '__proto__ cannot be a name here; remove it.' });
    expect(issue!.path).toMatch(/__proto__$/);
    expect(({} as { ok?: boolean }).ok).toBeUndefined();
  });

  test('nesting of any depth is refused, not followed', () => {
    const deep = JSON.parse('['.repeat(20_000) + ']'.repeat(20_000));
    const [issue] = issuesOf(checkJob(smallJobWith('/site', deep)));
    expect(issue).toMatchObject({ code: 'not-understood', path: '/site' });
  });

  test('a hundred complaints are enough', () => {
    const job = smallJobWith(
      `${chart}/pressure`,
      Array.from({ length: 1000 }, () => ['x', 1]),
    );
    expect(issuesOf(checkJob(job))).toHaveLength(100);
  });
});

describe('what is understood but out of range', () => {
  test.each([
    [
      `${pipe}/diameter_m`,
      0,
      `${pipe}/diameter_m`,
      'inside diameter (diameter_m) must be above 0 metres; 0 was given.',
    ],
    [`${pipe}/length_m`, -1, `${pipe}/length_m`, 'length (length_m) must be at least 0 metres; -1 was given.'],
    [
      '/site/altitude_m',
      20000,
      '/site/altitude_m',
      'altitude (altitude_m) must be at most 9000 metres; 20000 was given.',
    ],
    [
      '/site/relativeHumidity',
      50,
      '/site/relativeHumidity',
      'relative humidity (relativeHumidity) must be at most 1; 50 was given.',
    ],
    [
      '/blowers/0/evidence',
      [],
      '/blowers/0/evidence',
      'evidence needs at least 1 entry (chart, readings, rated-point, wheel).',
    ],
    ['/blowers/0/id', '', '/blowers/0/id', 'id must not be empty.'],
    [
      `${pipe}/diameter_m`,
      5e-324,
      `${pipe}/diameter_m`,
      'inside diameter (diameter_m) must be above 0 metres; 0 was given.',
    ],
  ])('%s = %j', (pointer, value, path, message) => {
    expect(issuesOf(checkJob(smallJobWith(pointer, value)))).toEqual([{ code: 'out-of-range', path, message }]);
  });
});

test('reads rounding dust in a curve as zero', () => {
  const checked = checkJob(smallJobWith(`${chart}/pressure/1/1`, -1e-16));
  expect(checked.ok && checked.value.blowers[0]!.evidence[0]).toMatchObject({
    pressure: expect.arrayContaining([[expect.any(Number), 0]]) as unknown,
  });
});

describe('the request of one curve', () => {
  const request = () => ({ site: smallJob().site, supply: smallJob().supply, blower: smallJob().blowers[0]! });

  test('is understood with and without a supply', () => {
    expect(checkCurveRequest(request()).ok).toBe(true);
    expect(checkCurveRequest({ ...request(), supply: undefined }).ok).toBe(true);
  });

  test('names what is wrong by its place in the request', () => {
    const blower = { ...request().blower, evidence: [{ kind: 'rated-point', flow_m3_s: 0, pressure_Pa: 0 }] };
    expect(issuesOf(checkCurveRequest({ ...request(), blower })).map(({ path }) => path)).toEqual([
      '/blower/evidence/0',
    ]);
    expect(issuesOf(checkCurveRequest({ ...request(), blower: null }))).toEqual([
      { code: 'not-understood', path: '/blower', message: 'blower is missing: give an object, { … }.' },
    ]);
  });
});
