import type { Opinion } from './meaning/opinions.ts';

/** What a value's confidence rests on, each a number that grows with trust. */
type Grounds = readonly [chance: number, agreement: number, length: number];

/**
 * Logistic regression of `right` on the grounds, in their order. Fitted by `tests/plates-score/fit-confidence.ts` on the 753 fields read
 * on 86 invented photos of plates; ridge 0.3.
 */
const FITTED = { constant: 1.19, weights: [0.78, 2.57, 0.5] } as const;

/** A chance this near to one says no more. */
const MOST_LOGIT = 6;
/** Longer numbers are all the same. */
const LONG = 3;

/**
 * The grounds of the likeliest value of a field: the logarithm of the odds of its chance, how far the readings agreed on its
 * characters, how many characters it has.
 */
export function groundsOf({ settled, choices }: Opinion): Grounds {
  const share = Math.min(Math.max(choices[0]!.share, 1e-6), 1 - 1e-6);
  const logit = Math.log(share / (1 - share));
  const places = settled.parts.map(({ candidate }) => candidate.place);
  const marks = places.flatMap(({ figure, whole }) =>
    (figure ?? whole).filter((mark) => mark.options[0]!.text !== ' '),
  );
  const mean = marks.reduce((sum, { options }) => sum + options[0]!.share, 0) / Math.max(marks.length, 1);
  const agreement = mean * Math.min(...places.map(({ seen }) => seen));
  return [
    Math.min(Math.max(logit, -MOST_LOGIT), MOST_LOGIT),
    agreement - 1,
    Math.min(marks.length / places.length, LONG) - LONG,
  ];
}

/** The chance that a value is right, all its grounds together. Source: logistic function. */
export function confidenceFrom(grounds: Grounds): number {
  const sum = grounds.reduce((total, ground, i) => total + ground * FITTED.weights[i]!, FITTED.constant);
  return 1 / (1 + Math.exp(-sum));
}
