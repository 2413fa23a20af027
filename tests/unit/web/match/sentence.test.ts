import { describe, expect, test } from 'vitest';
import { REASON_CODES } from '../../../../src/issues/reason-codes.ts';
import type { Quantity } from '../../../../src/units/index.ts';
import { chancePhrase, pegs } from '../../../../web/match/chance.ts';
import { firstWords } from '../../../../web/match/first-words.ts';
import { listed, namesIn } from '../../../../web/match/names.ts';
import { mostAsked, planTitle, planViews } from '../../../../web/match/plans.ts';
import { verdictSentence } from '../../../../web/match/sentence.ts';
import { reasonText, whyLine } from '../../../../web/match/why.ts';
import type { Say } from '../../../../web/match/why.ts';
import { match as en } from '../../../../web/texts/en-match.ts';
import { match as ur } from '../../../../web/texts/ur-match.ts';
import { jobWith, threeMachines } from '../ducts/shops.ts';
import { blowerOf, caseOf, plainNames, planOf } from './cases.ts';

const say: Say = {
  quantity: (quantity: Quantity, si: number) => `${si} ${quantity}`,
  range: (quantity, low, high) => `${low}–${high} ${quantity}`,
  percent: (share) => `${Math.round(100 * share)} %`,
  number: String,
};

describe('the verdict in words', () => {
  const all = (verdicts: Record<string, 'yes' | 'no' | 'unsure'>) =>
    Object.entries(verdicts).map(([id, verdict]) => planOf(id.split('+'), verdict));
  test.each([
    [{ saw: 'yes', planer: 'yes', 'saw+planer': 'yes' }, 'Strong enough for everything at once.'],
    [{ saw: 'yes', planer: 'yes', 'saw+planer': 'no' }, 'Strong enough for one machine at a time.'],
    [
      { saw: 'yes', planer: 'yes', 'saw+planer': 'unsure' },
      'Strong enough for one machine at a time. Saw and planer together not sure yet.',
    ],
    [
      { saw: 'yes', band: 'yes', planer: 'unsure', 'saw+planer': 'no' },
      'One machine at a time. Saw and band yes, planer not sure yet.',
    ],
    [{ saw: 'yes', planer: 'no' }, 'One machine at a time. Saw yes, planer no.'],
    [{ saw: 'unsure', planer: 'no' }, 'Not sure yet. Saw not sure yet, planer no.'],
    [{ saw: 'unsure', planer: 'unsure' }, 'Not sure yet.'],
    [{ saw: 'no', planer: 'no', 'saw+planer': 'no' }, 'Not strong enough for any machine.'],
    [
      { saw: 'no', planer: 'no', 'saw+planer': 'unsure' },
      'Not for any machine alone. Saw and planer together not sure yet.',
    ],
    [{ saw: 'yes' }, 'Strong enough for the saw.'],
    [{ saw: 'unsure' }, 'Not sure yet about the saw.'],
    [{ saw: 'no' }, 'Not strong enough for the saw.'],
    [{ 'saw+planer': 'yes' }, 'Strong enough for everything at once.'],
  ] as const)('%j', (verdicts, sentence) => {
    expect(verdictSentence(all(verdicts), blowerOf(), plainNames, en)).toBe(sentence);
  });

  test('a reading that must be wrong comes before all else', () => {
    const doubted = {
      ...blowerOf(),
      reasons: [
        { code: 'readings-doubtful', severity: 'caution', subject: '/blowers/0', text: '', values: {} } as const,
      ],
    };
    expect(verdictSentence(all({ saw: 'yes' }), doubted, plainNames, en)).toBe(
      'Not sure yet: one of its readings looks wrong. Put it right first.',
    );
  });

  test('many machines are counted, so that it stays three lines of a phone', () => {
    const many = Array.from({ length: 9 }, (_, i) =>
      planOf([`thickness planer number ${i}`], i < 5 ? 'yes' : i < 7 ? 'unsure' : 'no'),
    );
    const sentence = verdictSentence(many, blowerOf(), plainNames, en);
    expect(sentence).toBe('One machine at a time. 5 of 9 machines yes, 2 not sure yet, 2 no.');
  });

  test('a wheel that may burst comes before any word about air', () => {
    const plans = all({ saw: 'yes', planer: 'yes' });
    const fast = blowerOf([{ state: 'tip-speed', ok: false, probability: 0 }]);
    expect(verdictSentence(plans, fast, plainNames, en)).toBe(
      'Not at this speed: the wheel may burst. The air would be enough.',
    );
    const doubtful = blowerOf([{ state: 'tip-speed', ok: false, probability: 0.5 }]);
    expect(verdictSentence(plans, doubtful, plainNames, en)).toBe(
      'Strong enough for one machine at a time. Not sure the wheel stands this speed.',
    );
  });

  test('a state whose data are missing is not held against the blower', () => {
    const open = blowerOf([{ state: 'blocked-inlet', ok: null, probability: null }]);
    expect(verdictSentence(all({ saw: 'yes' }), open, plainNames, en)).toBe('Strong enough for the saw.');
  });

  test('a wheel in doubt is not the news where the air is short anyway', () => {
    const doubtful = blowerOf([{ state: 'tip-speed', ok: false, probability: 0.5 }]);
    expect(verdictSentence(all({ saw: 'no' }), doubtful, plainNames, en)).toBe('Not strong enough for the saw.');
  });

  test('Urdu says the same, with machine words of its own', () => {
    const job = jobWith(threeMachines());
    const names = namesIn(job, ur);
    expect(names.machine('planer')).toBe('رندہ مشین');
    const sentence = verdictSentence([planOf(['saw'], 'yes'), planOf(['planer'], 'unsure')], blowerOf(), names, ur);
    expect(sentence).toBe('ایک وقت میں ایک مشین۔ آرا: ہاں، رندہ مشین: ابھی پکا نہیں۔');
  });
});

describe('plans', () => {
  test('the page opens with the required plan that is least sure', () => {
    const plans = [planOf(['a'], 'yes'), planOf(['b'], 'unsure'), planOf(['a', 'b'], 'no')];
    expect(mostAsked(plans)!.name).toBe('b');
    expect(mostAsked([])).toBeNull();
  });
  test('each plan is judged by its worse filter state', () => {
    const clean = caseOf(['saw'], 0.99, { filterState: 'clean', gatePlan: 'saw alone' });
    const loaded = caseOf(['saw'], 0.6, { filterState: 'loaded', gatePlan: 'saw alone' });
    const [plan] = planViews({ cases: [clean, loaded], blowers: [], warnings: [], air: {} as never }, 'b1');
    expect(plan).toMatchObject({
      name: 'saw alone',
      verdict: 'unsure',
      probability: 0.6,
      clean,
      loaded,
      worst: loaded,
    });
  });
  test('a plan with one machine open is called by the machine, all others by their own name', () => {
    expect(planTitle({ name: 'saw alone', open: ['saw'] }, plainNames, en)).toBe('Saw');
    expect(planTitle({ name: 'all together', open: ['a', 'b'] }, plainNames, ur)).toBe('سب ایک ساتھ');
    expect(planTitle({ name: 'evening', open: ['a', 'b'] }, plainNames, en)).toBe('Evening');
  });
  test('lists say "and", and long ones say how many more', () => {
    expect(listed(['a'], en)).toBe('a');
    expect(listed(['a', 'b', 'c'], en)).toBe('a, b and c');
    expect(listed(['a', 'b', 'c', 'd', 'e'], en)).toBe('a, b and 3 more');
  });
});

describe('chances', () => {
  test.each([
    [1, 'over 99 in 100'],
    [0.96, '19 in 20'],
    [0.93, '9 in 10'],
    [0.7, '7 in 10'],
    [0.03, '1 in 20'],
    [0, 'under 1 in 100'],
  ])('%f is said as %s', (probability, said) => {
    expect(chancePhrase(probability, en)).toBe(said);
  });
  test('ten pegs are inked as far as the chance goes, never full nor bare while there is doubt', () => {
    const inked = (probability: number) => pegs(probability).reduce((sum, peg) => sum + peg, 0);
    expect(inked(0.7)).toBe(7);
    expect(inked(0.75)).toBe(7.5);
    expect(inked(0.99)).toBe(9.5);
    expect(inked(1)).toBe(10);
    expect(inked(0.01)).toBe(0.5);
    expect(inked(0)).toBe(0);
  });
});

test('a long instruction begins at a clause or a word and says that it goes on', () => {
  expect(firstWords('Clamp the amps.')).toBeNull();
  const long =
    'Put a larger pulley on the motor and leave the wheel; then build the main in a wider pipe as far as the drum.';
  expect(firstWords(long)).toBe('Put a larger pulley on the motor and leave the wheel …');
  const endless =
    'with the gates as for the planer alone let any blower suck through them and read the suction where it sits';
  expect(firstWords(endless)!.length).toBeLessThanOrEqual(90);
  expect(endless.startsWith(firstWords(endless)!.replace(' …', ''))).toBe(true);
});

describe('the line that says why', () => {
  test('too little air, with its range and the need', () => {
    expect(whyLine(planOf(['planer'], 'unsure'), plainNames, say, en)).toBe(
      'Full filters leave it 0.22–0.3 flow. It needs 0.25 flow.',
    );
  });
  test('of several weak spots the weakest speaks', () => {
    const slow = {
      code: 'velocity-low',
      severity: 'stop',
      subject: 'main',
      text: 'slow',
      values: { velocity_m_s: 14, minimum_m_s: 20, probability: 0.01 },
    } as const;
    const worst = caseOf(['planer'], 0.7, { reasons: [{ ...slow, values: { ...slow.values } }] });
    expect(whyLine(planOf(['planer'], 'unsure', { worst }), plainNames, say, en)).toBe(
      'Dust settles in main: 14 velocity, it needs 20 velocity.',
    );
  });
  test('two machines together name the one that is short', () => {
    expect(whyLine(planOf(['saw', 'planer'], 'no'), plainNames, say, en)).toBe(
      'Full filters leave the saw 0.22–0.3 flow. It needs 0.25 flow.',
    );
  });
  test('every reason of the core has words in both languages', () => {
    expect(REASON_CODES.filter((code) => !en.reasons[code])).toEqual([]);
    expect(REASON_CODES.filter((code) => !ur.reasons[code])).toEqual([]);
  });
  test('a reason without the numbers its words ask for keeps the core’s sentence', () => {
    const bare = {
      code: 'low-voltage',
      severity: 'caution',
      subject: 'motor',
      text: 'The motor runs hot.',
      values: {},
    } as const;
    expect(reasonText({ ...bare, values: {} }, plainNames, say, en)).toBe('The motor runs hot.');
    expect(
      reasonText({ ...bare, values: { voltage_V: 350, current_A: 4.9, plate_A: 4.6 } }, plainNames, say, en),
    ).toContain('350 voltage');
  });
});
