import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../src/index.ts';
import { barOn, placeOn, rulerFor } from '../../../web/blowers/bars.ts';
import { priceText, readPrice } from '../../../web/blowers/price-text.ts';
import { readCount } from '../../../web/forms/count-text.ts';
import { fileName } from '../../../web/jobs/file-name.ts';
import { fanPlotGeometry } from '../../../web/plot/fan-plot-geometry.ts';
import { ticksTo } from '../../../web/plot/ticks.ts';
import { aloneJob, flowOf, hardestOf } from '../../../web/state/alone.ts';
import { blankJob } from '../../../web/state/blank-job.ts';
import { hashOf, placeOf, readRoute, type Route } from '../../../web/state/route.ts';
import { chanceOf } from '../../../web/words/chance.ts';

describe('addresses', () => {
  const routes: Route[] = [
    { page: 'blowers' },
    { page: 'new-blower' },
    { page: 'blower', blowerId: 'b 1/2' },
    { page: 'photo', blowerId: 'b1', photoId: null },
    { page: 'photo', blowerId: 'b1', photoId: 'x-9' },
    { page: 'readings', blowerId: 'b1', index: 2 },
    { page: 'ducts' },
    { page: 'match' },
    { page: 'card' },
    { page: 'shop' },
    { page: 'jobs' },
    { page: 'new-job', step: 2 },
    { page: 'settings' },
  ];
  it.each(routes)('$page is there and back', (route) => {
    expect(readRoute(hashOf(route))).toEqual(route);
  });
  it('an address nobody knows is the match', () => {
    expect(readRoute('#/nowhere/%E0%A4%A')).toEqual({ page: 'match' });
    expect(readRoute('')).toEqual({ page: 'match' });
  });
  it('leaves of a blower belong to its tab, pages about the job to none', () => {
    expect(placeOf({ page: 'readings', blowerId: 'b1', index: 0 })).toBe('blowers');
    expect(placeOf({ page: 'shop' })).toBeNull();
  });
});

describe('chances are said as n in 10, finer at the ends', () => {
  it.each([
    [0.7, 7, 10],
    [0.949, 9, 10],
    [0.95, 19, 20],
    [0.999, 99, 100],
    [0.04, 1, 20],
    [0.06, 1, 10],
    [0.001, 0, 100],
  ])('%f', (p, n, of) => {
    expect(chanceOf(p)).toEqual({ n, of });
  });
});

describe('prices', () => {
  it.each([
    ['9,000 KES', 9000, 'KES'],
    ['KES 14 500', 14500, 'KES'],
    ['$45', 45, '$'],
    ['1,200.50 INR', 1200, 'INR'],
    ['۹۰۰۰ روپے', 9000, 'روپے'],
    ['250000', 250000, ''],
  ])('%s', (text, amount, currency) => {
    expect(readPrice(text)).toEqual({ amount, currency });
  });
  it('an empty field is no price, words alone are none either', () => {
    expect(readPrice('  ')).toBeNull();
    expect(readPrice('cheap')).toBe('not-a-price');
    expect(priceText({ amount: 9000, currency: 'KES' })).toBe('9,000 KES');
    expect(priceText(null)).toBe('');
  });
});

it('counts are whole, in Western, Arabic or Urdu digits', () => {
  expect([readCount('8'), readCount(' ٨ '), readCount('۱۲'), readCount('8.5'), readCount('')]).toEqual([
    8,
    8,
    12,
    null,
    null,
  ]);
});

it('a file is named after its job, in any script', () => {
  expect(fileName('School furniture: shop/1')).toBe('School-furniture-shop-1');
  expect(fileName('میری دکان')).toBe('میری-دکان');
  expect(fileName('…')).toBe('job');
});

describe('rulers and axes', () => {
  it('hold every bar and the need', () => {
    const flow = { flow_m3_s: 0.25, flow95_m3_s: [0.2, 0.3] as [number, number] };
    const ruler = rulerFor([flow, null, undefined], 0.35)!;
    expect(ruler.low).toBeLessThan(0.2);
    expect(ruler.high).toBeGreaterThan(0.35);
    const bar = barOn(ruler, flow);
    expect(bar.left).toBeCloseTo(placeOn(ruler, 0.2), 9);
    expect(bar.left + bar.width).toBeCloseTo(placeOn(ruler, 0.3), 9);
    expect(rulerFor([null], null)).toBeNull();
  });
  it('are ruled at round numbers', () => {
    expect(ticksTo(283, 4)).toEqual([0, 100, 200, 300]);
    expect(ticksTo(1, 5)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    expect(ticksTo(0, 4)).toEqual([0, 1]);
  });
  it('place a fan curve in the user’s units, with the band on both sides', () => {
    const curve = {
      flow_m3_s: [0, 0.25],
      totalPressure_Pa: [2000, 1000],
      low95_Pa: [1800, 800],
      high95_Pa: [2200, 1200],
      shaftPower_W: [],
      staticPressure_Pa: [],
      shaftPowerLow95_W: [],
      shaftPowerHigh95_W: [],
    };
    const frame = { width: 400, height: 200, left: 40, right: 0, top: 0, bottom: 20 };
    const g = fanPlotGeometry(
      curve,
      [{ flow_m3_s: 0.125, totalPressure_Pa: 1500, kind: 'readings', evidence: 0, key: 'r' }],
      frame,
      { flow: 'm³/h', pressure: 'Pa' },
    );
    expect(g.xTicks.map((tick) => tick.text)).toEqual([0, 200, 400, 600, 800, 1000]);
    expect(g.xTicks[0]!.at).toBe(40);
    expect(g.points[0]!.x).toBeCloseTo(40 + (360 * 450) / 1000, 6);
    expect(g.curve.startsWith('M40.0 ')).toBe(true);
    expect(g.band.endsWith('Z')).toBe(true);
    expect(fanPlotGeometry(null, [], frame, { flow: 'm³/h', pressure: 'Pa' }).curve).toBe('');
  });
});

describe('one find alone', () => {
  const job = blankJob('Shed');
  const blower = {
    id: 'b1',
    wheel: { family: 'radial' as const },
    drive: { kind: 'direct' as const },
    motor: { ratedPower_W: 1 },
    evidence: [],
  };
  const pickup = (id: string, probability: number, open = true) => ({
    id,
    open,
    probability,
    flow_m3_s: 0.2,
    flow95_m3_s: [0.1, 0.3],
    requiredFlow_m3_s: 0.25,
    ok: true,
  });
  const one = (gatePlan: string, filterState: string, probability: number, pickups: unknown[], required = true) => ({
    blowerId: 'b1',
    gatePlan,
    filterState,
    probability,
    pickups,
    required,
    operatingPoint: {},
  });
  const assessment = {
    blowers: [{ blowerId: 'b1', rank: 1 }],
    cases: [
      one('saw alone', 'clean', 0.9, [pickup('saw', 0.9)]),
      one('planer alone', 'clean', 0.5, [pickup('planer', 0.5), pickup('saw', 1, false)]),
      one('planer alone', 'loaded', 0.3, [pickup('planer', 0.3), pickup('saw', 1, false)]),
      one('both', 'loaded', 0.01, [pickup('planer', 0.01)], false),
    ],
  } as unknown as Assessment;

  it('is asked about the machine that is hardest to serve in a plan that counts', () => {
    expect(hardestOf(assessment)).toEqual({
      planName: 'planer alone',
      open: ['planer'],
      pickupId: 'planer',
      requiredFlow_m3_s: 0.25,
    });
  });
  it('is a job with that find and that plan only; its flow is read with full filters', () => {
    const hardest = hardestOf(assessment)!;
    const alone = aloneJob(job, blower, { kind: 'wheel' }, hardest);
    expect(alone.blowers).toEqual([{ ...blower, evidence: [{ kind: 'wheel' }] }]);
    expect(alone.gatePlans).toEqual([{ name: 'planer alone', open: ['planer'], required: true }]);
    expect(flowOf(assessment, 'b1', hardest)).toEqual({ flow_m3_s: 0.2, flow95_m3_s: [0.1, 0.3] });
    expect(flowOf(assessment, 'b9', hardest)).toBeNull();
  });
});
