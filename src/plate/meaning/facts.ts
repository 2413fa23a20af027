import type { Hit } from '../layout/hits.ts';
import { inOneRow } from '../layout/boxes.ts';
import type { FieldName } from '../reading.ts';
import type { Candidate } from './candidates.ts';

/** What kind of machine a plate speaks of, as far as its words say so before any number is settled. */
export type Facts = {
  readonly phases: 1 | 3 | null;
  readonly hasCapacitor: boolean;
  /** air flow or pressure is named, volts and amps are not */
  readonly isBlower: boolean;
  readonly capacitorHits: readonly Hit[];
};

/** Reads the kind of machine off the words that were recognised. */
export function factsOf(hits: readonly Hit[]): Facts {
  const named = (field: FieldName, least = 0.6) =>
    hits.filter((hit) => hit.clarity > least && hit.meanings.some((m) => m.field === field && m.weight >= 0.25));
  const spoken = hits.flatMap((hit) =>
    hit.meanings.filter((m) => m.field === 'phases' && m.value !== undefined && hit.clarity > 0.6),
  );
  const capacitorHits = [...named('capacitor_uF', 0.85), ...named('startCapacitor_uF', 0.85)].filter(
    ({ text }) => text.length > 1,
  );
  const isElectric = named('current_A').length + named('powerFactor').length > 0;
  const isAir =
    named('flow_m3_s').some(({ text }) => text.length > 1) || named('pressure_Pa').some(({ text }) => text.length > 1);
  return {
    phases: (spoken[0]?.value as 1 | 3 | undefined) ?? null,
    hasCapacitor: capacitorHits.length > 0,
    isBlower: isAir && !isElectric,
    capacitorHits,
  };
}

/** How the kind of machine moves the odds of a field at a place: natural logarithm. Orders of magnitude, practice values. */
export function withFacts(candidate: Candidate, facts: Facts): Candidate {
  return { ...candidate, score: candidate.score + (BY_FACTS[candidate.field]?.(candidate, facts) ?? 0) };
}

/** Largest usual single-phase motor [W]. Practice value. */
const MOST_ONE_PHASE_W = 7600;

const isByCapacitor = ({ place }: Candidate, { capacitorHits }: Facts) =>
  capacitorHits.some((hit) => inOneRow(hit, place));
const most = ({ alternatives }: Candidate) => Math.max(...(alternatives[0]!.numbers ?? [0]));

const BY_FACTS: { readonly [Name in FieldName]?: (candidate: Candidate, facts: Facts) => number } = {
  capacitorVoltage_V: (candidate, facts) =>
    isByCapacitor(candidate, facts) ? 2.5 : facts.phases === 3 ? -4 : facts.hasCapacitor || facts.phases === 1 ? 0 : -3,
  // one phase has no more than 277 V anywhere
  voltage_V: (candidate, facts) =>
    (facts.phases === 1 || facts.hasCapacitor) && most(candidate) > 300
      ? isByCapacitor(candidate, facts)
        ? -3
        : -1.5
      : 0,
  // no socket feeds more by one phase
  ratedPower_W: (candidate, facts) =>
    (facts.phases === 1 || facts.hasCapacitor) && most(candidate) > MOST_ONE_PHASE_W ? -3 : 0,
  startCapacitor_uF: (candidate) => (candidate.labelled > 1 ? 0 : -1.5),
  capacitor_uF: (_, facts) => (facts.phases === 3 ? -3 : 0),
  airTemperature_C: (_, { isBlower }) => (isBlower ? 1 : -1.5),
  ambient_C: (_, { isBlower }) => (isBlower ? -1 : 0.5),
};
