/** Nominal voltages of the three-phase columns [V]. Source: table 430.250. */
export const THREE_PHASE_VOLTS = [200, 208, 230, 460, 575] as const;
/** Nominal voltages of the single-phase columns [V]. Source: table 430.248. */
export const SINGLE_PHASE_VOLTS = [115, 200, 208, 230] as const;

/**
 * Full-load current of three-phase 60 Hz motors [A]: rated power [hp], then amps at 200, 208, 230, 460, 575 V.
 * Source: US National Electrical Code table 430.250, two public transcriptions compared. Exact. Generous: meant for sizing wires.
 */
export const THREE_PHASE_CURRENT: readonly (readonly [hp: number, ...amps: number[]])[] = [
  [0.5, 2.5, 2.4, 2.2, 1.1, 0.9],
  [0.75, 3.7, 3.5, 3.2, 1.6, 1.3],
  [1, 4.8, 4.6, 4.2, 2.1, 1.7],
  [1.5, 6.9, 6.6, 6.0, 3.0, 2.4],
  [2, 7.8, 7.5, 6.8, 3.4, 2.7],
  [3, 11.0, 10.6, 9.6, 4.8, 3.9],
  [5, 17.5, 16.7, 15.2, 7.6, 6.1],
  [7.5, 25.3, 24.2, 22.0, 11.0, 9.0],
  [10, 32.2, 30.8, 28.0, 14.0, 11.0],
  [15, 48.3, 46.2, 42.0, 21.0, 17.0],
  [20, 62.1, 59.4, 54.0, 27.0, 22.0],
  [25, 78.2, 74.8, 68.0, 34.0, 27.0],
  [30, 92.0, 88.0, 80.0, 40.0, 32.0],
];

/**
 * Full-load current of single-phase motors [A]: rated power [hp], then amps at 115, 200, 208, 230 V.
 * Source: US National Electrical Code table 430.248, public transcription; one public copy is shifted by a row, this one is not. Exact.
 */
export const SINGLE_PHASE_CURRENT: readonly (readonly [hp: number, ...amps: number[]])[] = [
  [1 / 6, 4.4, 2.5, 2.4, 2.2],
  [1 / 4, 5.8, 3.3, 3.2, 2.9],
  [1 / 3, 7.2, 4.1, 4.0, 3.6],
  [0.5, 9.8, 5.6, 5.4, 4.9],
  [0.75, 13.8, 7.9, 7.6, 6.9],
  [1, 16.0, 9.2, 8.8, 8.0],
  [1.5, 20.0, 11.5, 11.0, 10.0],
  [2, 24.0, 13.8, 13.2, 12.0],
  [3, 34.0, 19.6, 18.7, 17.0],
  [5, 56.0, 32.2, 30.8, 28.0],
  [7.5, 80.0, 46.0, 44.0, 40.0],
  [10, 100.0, 57.5, 55.0, 50.0],
];
