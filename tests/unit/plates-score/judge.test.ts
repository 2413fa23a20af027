import { describe, expect, test } from 'vitest';
import type { PlateTruth } from '../../../fixtures/generate/plate/truth.ts';
import { sameValue } from '../../plates-score/judge.ts';
import { scorePlate, type PlateAnswer } from '../../plates-score/score-photo.ts';

const truth: PlateTruth = {
  id: 'x',
  file: 'x.jpg',
  difficulty: 'hard',
  kind: 'motor-plate',
  fields: {
    voltage_V: [230, 400],
    current_A: [6.1, 3.5],
    speed_rpm: 1440,
    powerFactor: 0.8,
    serialNumber: 'A12',
    ratedPower_W: 15000,
  },
  asPrinted: {},
  unreadable: ['efficiency', 'year', 'capacitor_uF'],
  wrong: ['ratedPower_W'],
  lost: { fields: { efficiency: 0.85, year: 1990, capacitor_uF: 30 }, asPrinted: {} },
  maker: '',
  model: '',
  photo: {
    width: 1,
    height: 1,
    exifOrientation: 1,
    uprightSize: [1, 1],
    plateQuad: [],
    fieldQuads: {},
    smallestCapitalPx: 20,
  },
  conditions: '',
};
const verdicts = (answer: PlateAnswer | null, of: PlateTruth = truth) =>
  scorePlate(of, answer, null, 1).judged.map((j) => [j.name, j.where, j.verdict, j.sure]);

describe('what counts as the same', () => {
  test.each([
    ['voltage_V', [230, 400], [400, 230], true],
    ['voltage_V', [230, 400], [230], false],
    ['voltage_V', [230, 400], [230, 230], false],
    ['voltage_V', [230], 230, true],
    ['current_A', [10], [10.05], true],
    ['current_A', [10], [10.06], false],
    ['speed_rpm', 1440, 1441, false],
    ['ratedPower_W', 3728.5, 3730, true],
    ['ipRating', 'IP55', '55', true],
    ['duty', 'CONT', 'continuous', true],
    ['insulationClass', 'F', 'Cl. F', true],
    ['insulationClass', 'F', 'B', false],
    ['frameSize', '132 S', '132S', true],
    ['frameSize', '132S', '132M', false],
    ['powerFactor', 0.82, 'abc', false],
    ['flow_m3_s', 0, 0.001, false],
  ] as const)('%s %j against %j', (name, printed, got, same) => {
    expect(sameValue(name, printed as number | number[] | string, got)).toBe(same);
  });
});

describe('an answer', () => {
  test('is right, flagged, silently wrong, left open, guessed or invented', () => {
    const answer: PlateAnswer = {
      fields: {
        voltage_V: { value: [400, 230], needsReview: false },
        current_A: { value: [61, 3.5], needsReview: true },
        speed_rpm: { value: 1140, needsReview: false },
        serialNumber: { value: 'A12' },
        ratedPower_W: { value: 15000, needsReview: true },
        efficiency: { value: 0.7, needsReview: false },
        year: { value: 1990 },
        capacitor_uF: { value: null, needsReview: true },
        mass_kg: { value: 12 },
        ambient_C: { value: 40, derived: true },
        poles: { value: 4 },
      },
    };
    expect(verdicts(answer)).toEqual([
      ['voltage_V', 'field', 'right', true],
      ['current_A', 'field', 'flagged', false],
      ['speed_rpm', 'field', 'silentlyWrong', false],
      ['powerFactor', 'field', 'flagged', false],
      ['serialNumber', 'identity', 'right', true],
      ['ratedPower_W', 'field', 'right', false],
      ['efficiency', 'unreadable', 'silentlyWrong', true],
      ['year', 'unreadable', 'guessed', true],
      ['capacitor_uF', 'unreadable', 'leftOpen', false],
      ['mass_kg', 'invented', 'silentlyWrong', true],
    ]);
    expect(scorePlate(truth, answer, null, 1).noticed).toEqual([{ name: 'ratedPower_W', flagged: true }]);
  });

  test('that never came leaves everything to the person', () => {
    expect(verdicts(null).filter(([, , verdict]) => verdict === 'silentlyWrong' || verdict === 'right')).toEqual([]);
  });
});

describe('cells of a sheet', () => {
  const sheet: PlateTruth = {
    ...truth,
    kind: 'readings-sheet',
    fields: {},
    unreadable: [],
    wrong: [],
    table: {
      columns: ['staticPressure_Pa', 'speed_rpm'].map((key) => ({ key, header: '', unit: '', siFactor: 1 })),
      rows: [],
      rowsSI: [
        [98.0665, 2900],
        [201.036, null],
      ],
      asPrinted: [
        ['10', '2900'],
        ['20.5', null],
      ],
    },
  };
  const count = (answer: Partial<PlateAnswer>) => {
    const all = verdicts({ fields: {}, ...answer }, sheet).map(([, , verdict]) => verdict);
    return ['right', 'flagged', 'silentlyWrong'].map((v) => all.filter((one) => one === v).length);
  };

  test('are judged in SI, found by what their column says it is', () => {
    const columns = [{ quantity: 'speed_rpm' }, { quantity: 'staticPressure_Pa' }];
    expect(
      count({
        columns,
        rows: [
          [2900, 98.07],
          [null, 201],
        ],
      }),
    ).toEqual([4, 0, 0]);
    expect(
      count({
        columns,
        rows: [
          [2901, 98.07],
          [null, 250],
        ],
        cells: [
          [{}, {}],
          [{}, { needsReview: true }],
        ],
      }),
    ).toEqual([2, 1, 1]);
  });

  test('that nobody wrote are wrong, those that are missing are told', () => {
    expect(
      count({
        rows: [
          [98.07, 2900],
          [201, 5],
        ],
      }),
    ).toEqual([3, 0, 1]);
    expect(
      count({
        rows: [
          [98.07, 2900],
          [201, null],
          [1, 2],
        ],
      }),
    ).toEqual([4, 0, 2]);
    expect(count({ rows: [[98.07]] })).toEqual([2, 2, 0]);
  });
});
