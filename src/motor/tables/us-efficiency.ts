/** Levels of the US rules, lowest first. Source: see `US_EFFICIENCY`. */
export const US_LEVELS = ['small polyphase', '1992 act', 'premium'] as const;
/** One of `US_LEVELS`. */
export type UsLevel = (typeof US_LEVELS)[number];

/** Rated power [hp], then full-load efficiency [%] with 6, 4 and 2 poles; null where the rule has none. */
type UsRow = readonly [hp: number, sixPoles: number | null, fourPoles: number, twoPoles: number | null];

/**
 * US nominal full-load efficiencies at 60 Hz, open motors.
 * Sources: 10 CFR 431.446 (small polyphase, average), 42 USC 6313(b)(1) (1992 energy policy act), 10 CFR 431.25 table 1 (premium),
 * read in public copies. Exact. `enclosed` differs by up to 1.5 points and is given where a source has it.
 */
export const US_EFFICIENCY: Readonly<Record<UsLevel, { open: readonly UsRow[]; enclosed: readonly UsRow[] }>> = {
  'small polyphase': {
    open: [
      [0.25, 67.5, 69.5, 65.6],
      [0.33, 71.4, 73.4, 69.5],
      [0.5, 75.3, 78.2, 73.4],
      [0.75, 81.7, 81.1, 76.8],
      [1, 82.5, 83.5, 77.0],
      [1.5, 83.8, 86.5, 84.0],
      [2, null, 86.5, 85.5],
      [3, null, 86.9, 85.5],
    ],
    enclosed: [],
  },
  '1992 act': {
    open: [
      [1, 80.0, 82.5, null],
      [1.5, 84.0, 84.0, 82.5],
      [2, 85.5, 84.0, 84.0],
      [3, 86.5, 86.5, 84.0],
      [5, 87.5, 87.5, 85.5],
      [7.5, 88.5, 88.5, 87.5],
      [10, 90.2, 89.5, 88.5],
      [15, 90.2, 91.0, 89.5],
      [20, 91.0, 91.0, 90.2],
      [25, 91.7, 91.7, 91.0],
    ],
    enclosed: [
      [1, 80.0, 82.5, 75.5],
      [1.5, 85.5, 84.0, 82.5],
      [2, 86.5, 84.0, 84.0],
      [3, 87.5, 87.5, 85.5],
      [5, 87.5, 87.5, 87.5],
      [7.5, 89.5, 89.5, 88.5],
      [10, 89.5, 89.5, 89.5],
      [15, 90.2, 91.0, 90.2],
      [20, 90.2, 91.0, 90.2],
      [25, 91.7, 92.4, 91.0],
    ],
  },
  premium: {
    open: [
      [1, 82.5, 85.5, 77.0],
      [1.5, 86.5, 86.5, 84.0],
      [2, 87.5, 86.5, 85.5],
      [3, 88.5, 89.5, 85.5],
      [5, 89.5, 89.5, 86.5],
      [7.5, 90.2, 91.0, 88.5],
      [10, 91.7, 91.7, 89.5],
    ],
    enclosed: [
      [1, 82.5, 85.5, 77.0],
      [1.5, 87.5, 86.5, 84.0],
      [2, 88.5, 86.5, 85.5],
      [3, 89.5, 89.5, 86.5],
      [5, 89.5, 89.5, 88.5],
      [7.5, 91.0, 91.7, 89.5],
      [10, 91.0, 91.7, 90.2],
    ],
  },
};
