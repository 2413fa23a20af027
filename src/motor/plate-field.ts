import type { Warning } from '../issues/result.ts';

/** What a plate may leave unsaid and the program fills in. */
export type PlateField =
  'voltage_V' | 'current_A' | 'powerFactor' | 'efficiency' | 'phases' | 'frequency_Hz' | 'ratedPowerMeaning';

const WORDS: Record<PlateField, string> = {
  voltage_V: 'voltage',
  current_A: 'amps',
  powerFactor: 'power factor',
  efficiency: 'efficiency',
  phases: 'phases',
  frequency_Hz: 'frequency',
  ratedPowerMeaning: 'whether its watts are drawn or given',
};

/** One warning that names what was not on the plate; none where nothing was missing. Source: definition. */
export function estimateWarning(estimated: readonly PlateField[], path: string): Warning[] {
  if (estimated.length === 0) return [];
  const list = estimated.map((field) => WORDS[field]);
  const text = `Not on the motor's plate and taken from typical motors of its size: ${list.join(', ')}.`;
  return [{ code: 'plate-estimated', text, path }];
}
