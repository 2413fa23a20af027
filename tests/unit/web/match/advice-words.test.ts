import { describe, expect, test } from 'vitest';
import { CHANGE_KINDS } from '../../../../src/advice/change.ts';
import type { Remedy } from '../../../../src/assessment.ts';
import { measureWords, remedyWords } from '../../../../web/match/advice-words.ts';
import type { Say } from '../../../../web/match/why.ts';
import { match as en } from '../../../../web/texts/en-match.ts';
import { match as ur } from '../../../../web/texts/ur-match.ts';

const say: Say = {
  quantity: (quantity, si) => `${si} ${quantity}`,
  range: (quantity, low, high) => `${low}–${high} ${quantity}`,
  percent: (share) => `${100 * share} %`,
  number: String,
};
const remedy: Remedy = {
  kind: 'pulley+filters',
  text: 'Put on another pulley; and more filters.',
  change: [],
  verdictAfter: 'yes',
  probabilityAfter: 0.97,
  parts: [
    { kind: 'pulley', values: { motorPulley_m: 0.09, wheelPulley_m: 0.1, speed_rpm: 2610 } },
    { kind: 'filters', values: { before: 2, after: 3 } },
  ],
  outcome: { machine: 'planer', flow_m3_s: 0.31, flowNow_m3_s: 0.2, required_m3_s: 0.25, load: 0.8, loadNow: 0.7 },
};

describe('advice in words', () => {
  test('every kind of change and of measurement has Urdu words, and a short name in both languages', () => {
    expect(CHANGE_KINDS.filter((kind) => !ur.advice!.changes[kind])).toEqual([]);
    for (const texts of [en, ur]) expect(CHANGE_KINDS.filter((kind) => !texts.next.remedies[kind])).toEqual([]);
    expect(Object.keys(ur.advice!.measurements).sort()).toEqual(Object.keys(en.next.measurements).sort());
  });

  test('English keeps the core’s sentence', () => {
    expect(remedyWords(remedy, say, en)).toBe(remedy.text);
  });

  test('Urdu says every number of a remedy, then and now', () => {
    const said = remedyWords(remedy, say, ur);
    for (const number of [
      '0.09 length',
      '0.1 length',
      '2610 speed',
      '2',
      '3',
      '0.31 flow',
      '0.2 flow',
      '0.25 flow',
      '80 %',
      '70 %',
    ])
      expect(said).toContain(number);
    expect(said).not.toContain('undefined');
  });

  test('a kind without words keeps the core’s sentence', () => {
    const odd = { ...remedy, parts: [{ kind: 'sails', values: {} }] };
    expect(remedyWords(odd, say, ur)).toBe(remedy.text);
  });

  test('a hole is named with its size, and none at all as a closed cap', () => {
    const measure = (hole: { hole_m?: number }) => ({
      measurement: 'orifice-cap',
      text: 'Put a cap on.',
      values: { ...hole, expected_Pa: 900 },
      expectedDoubtRemoved: 0.5,
      detail: {},
    });
    expect(measureWords(measure({ hole_m: 0.06 }), say, ur)).toContain('0.06 length');
    expect(measureWords(measure({}), say, ur)).toContain('بند');
  });
});
