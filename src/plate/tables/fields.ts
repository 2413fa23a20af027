import type { FieldName } from '../reading.ts';

/**
 * What a field's values look like. Numbers in the field's own unit.
 * `usual`: values that make up `usualShare` of all plates; `digits`: significant figures such a value is printed with, so
 * that the chance of hitting a usual value by accident can be told.
 */
export type FigureForm = {
  readonly least: number;
  readonly most: number;
  readonly whole: boolean;
  /** plates print several of it: two voltages, two rating rows */
  readonly several: boolean;
  /** a bare number is never taken for it: its unit must stand somewhere */
  readonly needsUnit: boolean;
  readonly usual?: readonly number[];
  readonly usualShare?: number;
  /** usual values that go by the unit: its factor */
  readonly usualIn?: (factor: number) => readonly number[];
};

const form = (least: number, most: number, extra: Partial<FigureForm> = {}): FigureForm => ({
  least,
  most,
  whole: false,
  several: false,
  needsUnit: false,
  ...extra,
});

/** Standard sizes of motors [kW]. Source: IEC 60072-1 preferred outputs. */
const SIZES_kW = [
  0.06, 0.09, 0.12, 0.18, 0.25, 0.37, 0.55, 0.75, 1.1, 1.5, 1.8, 2.2, 3, 3.7, 4, 5.5, 7.5, 9.2, 11, 15, 18.5, 22, 30,
  37, 45, 55, 75, 90, 110, 132, 160,
];
/** Standard sizes of motors [HP]. Source: NEMA MG 1 part 10. */
const SIZES_HP = [
  1 / 12,
  1 / 8,
  1 / 6,
  1 / 4,
  1 / 3,
  1 / 2,
  3 / 4,
  1,
  1.5,
  2,
  3,
  4,
  5,
  5.5,
  7.5,
  10,
  12.5,
  15,
  20,
  25,
  30,
  40,
  50,
  60,
  75,
  100,
  125,
  150,
  200,
];

/**
 * Voltages in use. Source: IEC 60038, ANSI C84.1, and older mains of the same countries; below 100 V and 180 V: usual for
 * direct current (NEMA MG 1 part 10), from memory.
 */
export const VOLTS: readonly number[] = [
  24, 48, 90, 180, 100, 110, 115, 120, 127, 200, 208, 220, 230, 240, 254, 265, 277, 280, 290, 346, 380, 400, 415, 420,
  440, 460, 480, 500, 525, 550, 575, 600, 660, 690, 720, 725,
];

/** Forms of the fields that are numbers. Ranges: small workshop blowers and motors, generously. */
export const FIGURE_FORMS: { readonly [Name in FieldName]?: FigureForm } = {
  ratedPower_W: form(15, 400_000, {
    several: true,
    needsUnit: true,
    usualIn: (factor) =>
      factor === 1 || factor === 1000 ? SIZES_kW.map((p) => p * 1000) : SIZES_HP.map((p) => p * factor),
    usualShare: 0.65,
  }),
  voltage_V: form(24, 1000, { whole: true, several: true, usual: VOLTS, usualShare: 0.97 }),
  current_A: form(0.08, 900, { several: true }),
  frequency_Hz: form(16, 400, { whole: true, several: true, usual: [50, 60], usualShare: 0.98 }),
  phases: form(1, 3, { whole: true, usual: [1, 3], usualShare: 1 }),
  powerFactor: form(0.4, 1, { several: true }),
  efficiency: form(0.25, 0.985, { several: true }),
  speed_rpm: form(300, 60_000, { whole: true, several: true }),
  serviceFactor: form(1, 1.75, { usual: [1, 1.05, 1.1, 1.15, 1.2, 1.25, 1.3, 1.35, 1.4, 1.5, 1.6], usualShare: 0.97 }),
  capacitor_uF: form(0.5, 400, {
    usual: [
      1, 1.5, 2, 2.5, 3, 3.15, 3.5, 4, 4.5, 5, 6, 6.3, 7, 8, 9, 10, 12, 12.5, 14, 15, 16, 18, 20, 22, 25, 30, 31.5, 35,
      36, 40, 45, 50, 55, 60, 65, 70, 75, 80, 100, 120,
    ],
    usualShare: 0.9,
  }),
  // printed as a range: makers' tolerance bands of electrolytic capacitors, common practice
  startCapacitor_uF: form(10, 1500, {
    several: true,
    usual: [
      21, 43, 52, 53, 64, 72, 77, 88, 108, 124, 130, 145, 149, 156, 161, 175, 189, 193, 216, 227, 233, 243, 259, 270,
      280, 292, 324, 340, 378, 408, 460, 540, 552, 20, 25, 30, 40, 50, 60, 63, 70, 80, 90, 100, 120, 125, 140, 150, 160,
      180, 200, 220, 250, 300, 350, 400, 500,
    ],
    usualShare: 0.85,
  }),
  capacitorVoltage_V: form(100, 800, {
    whole: true,
    usual: [165, 250, 260, 280, 300, 320, 330, 350, 370, 400, 420, 425, 440, 450, 460, 475, 480, 500, 550, 600],
    usualShare: 0.96,
  }),
  year: form(1930, 2035, { whole: true }),
  mass_kg: form(0.3, 6000),
  ambient_C: form(15, 90, { usual: [40, 50, 45, 55, 60, 30, 35, 25, 20, 65, 70, 80], usualShare: 0.97 }),
  airTemperature_C: form(-40, 500, {
    usual: [20, 40, 50, 55, 60, 65, 70, 75, 80, 90, 100, 110, 120, 140, 150, 180, 200, 250, 300, 350, 400],
    usualShare: 0.95,
  }),
  flow_m3_s: form(0.003, 90, { needsUnit: true }),
  pressure_Pa: form(10, 80_000, { needsUnit: true }),
  wheelDiameter_m: form(0.05, 3, { needsUnit: true }),
};

/** One way a code of a field is written, and how much likelier it stands there than anywhere: natural logarithm. */
export type CodePattern = {
  readonly field: FieldName;
  readonly whole: RegExp;
  /** with no word or place to say so */
  readonly bySelf: number;
  /** where a label points at it */
  readonly labelled: number;
};

const code = (field: FieldName, whole: RegExp, bySelf: number, labelled: number): CodePattern => ({
  field,
  whole,
  bySelf,
  labelled,
});

/** Forms of the fields that are codes, capitals only. Likelihoods are orders of magnitude. */
export const CODE_PATTERNS: readonly CodePattern[] = [
  code('ipRating', /^IP ?\d[\dX][A-Z]?$/, 9, 6),
  code('ipRating', /^[0-6][0-8X]$/, -1, 2.5),
  code('efficiencyClass', /^IE ?[1-5]$/, 9, 6),
  code('efficiencyClass', /^[1-5]$/, -4, 1),
  code('efficiencyClass', /^EFF ?[123]$/, 6, 3),
  code('duty', /^S ?[1-9]$/, 7, 7),
  code('duty', /^S ?[2-9][ -]?\d{1,3}(?:%|MIN|ED)$/, 7.5, 7.5),
  code('duty', /^CONT(?:INUOUS|\.|IN)?$/, 5, 5),
  code('duty', /^(?:INT(?:ERMITTENT)?|\d{1,3}MIN|24H)\.?$/, 2, 3),
  code('insulationClass', /^[BFH]$/, 2.3, 4),
  code('insulationClass', /^[AEYCN]$/, -2, 2.5),
  code('insulationClass', /^(?:105|120|130|155|180|200) ?\(?[AEBFH]?\)?$/, 0, 3),
  code('codeLetter', /^[A-HJ-NP-V]$/, -1, 3),
  code('designLetter', /^[ABCDN]$/, -1, 3.5),
  code(
    'frameSize',
    /^(?:56|63|71|80|90|100|112|132|160|180|200|225|250|280|315)[- ]?(?:[SML][ABCXY]?|[ABC])?\d?(?:-\d)?$/,
    0,
    3.5,
  ),
  code(
    'frameSize',
    /^(?:48|56|66|143|145|182|184|213|215|254|256|284|286|324|326|364|365|404|405|444|445)[A-Z]{0,4}$/,
    0.5,
    3.5,
  ),
  code('frameSize', /^[A-Z]{1,3}[- ]?\d{2,3}[A-Z]{0,3}$/, -4, 1.5),
  code('serialNumber', /^\d{2,}[-/.]?\d{3,}(?:[-/.]\d+)*$/, 2.3, 2.5),
  code('serialNumber', /^(?=(?:.*\d){3})[A-Z]{0,4}\d[A-Z\d]*(?:[-/.][A-Z\d]+)*$/, -1, 2.5),
  code('serialNumber', /^[A-Z\d][A-Z\d./-]*\d[A-Z\d./-]*$/, -3, 1),
];

/** Whether a word is a code that no other word looks like: IP55, S1, CONT. */
export function isCodeBySelf(text: string): boolean {
  const capitals = text.toUpperCase();
  return CODE_PATTERNS.some(({ whole, bySelf }) => bySelf >= SELF_EVIDENT && whole.test(capitals));
}
const SELF_EVIDENT = 3.5;
