import { expect, it } from 'vitest';
import { influenceOfEvidence, type CurveRequest } from '../../src/index.ts';

const chart = {
  kind: 'chart' as const,
  speed_rpm: 2900,
  airDensity_kg_m3: 1.2,
  pressureKind: 'static' as const,
  accuracyGrade: 'AN3' as const,
  pressure: [
    [0, 2150],
    [0.1, 2100],
    [0.2, 1970],
    [0.3, 1750],
    [0.4, 1430],
  ] as [number, number][],
};
const request: CurveRequest = {
  site: { altitude_m: 0, airTemperature_C: 20 },
  supply: { voltage_V: 400, frequency_Hz: 50, phases: 3 },
  blower: {
    id: 'b1',
    wheel: { family: 'radial', diameter_m: 0.45 },
    outletArea_m2: 0.03,
    drive: { kind: 'direct' },
    runSpeed_rpm: 2900,
    motor: { ratedPower_W: 2200 },
    evidence: [chart, { kind: 'wheel' }],
  },
};

it('without the chart the band is wide, with it narrow; the wheel adds nothing beside it', () => {
  const [ofChart, ofWheel] = influenceOfEvidence(request, 0.25);
  expect(ofChart!.together!).toBeGreaterThan(0);
  expect(ofChart!.without!).toBeGreaterThan(2 * ofChart!.together!);
  expect(ofWheel!.without!).toBeCloseTo(ofWheel!.together!, 2);
});

it('the only piece of evidence is compared with the wheel alone; far beyond the curve nothing is said', () => {
  const alone = { ...request, blower: { ...request.blower, evidence: [chart] } };
  const [both] = influenceOfEvidence(request, 0.25);
  expect(influenceOfEvidence(alone, 0.25)[0]!.without!).toBeCloseTo(both!.without!, 6);
  expect(influenceOfEvidence(alone, 50)).toEqual([{ together: null, without: null }]);
});
