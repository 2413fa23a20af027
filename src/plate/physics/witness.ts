import type { Opinion } from '../meaning/opinions.ts';
import type { FieldName } from '../reading.ts';
import { airAgreement, tipAgreement } from './air.ts';
import { weighedTogether, type Choice } from './joint.ts';
import { massAgreement, pairAgreement, powerAgreement, type Electrical } from './power.ts';
import { speedAgreement } from './speed.ts';

/** Fields that contradict each other, and the chance that they do. */
export type Contradiction = { readonly fields: readonly FieldName[]; readonly chance: number };
export type Witnessed = { readonly opinions: readonly Opinion[]; readonly contradictions: readonly Contradiction[] };

/** What contradicts what, in the order of the agreements below. */
const ELECTRICAL = [
  ['ratedPower_W', 'current_A'],
  ['current_A', 'voltage_V'],
  ['ratedPower_W', 'mass_kg'],
] as const;
const MECHANICAL = [
  ['speed_rpm', 'frequency_Hz'],
  ['ratedPower_W', 'flow_m3_s'],
  ['speed_rpm', 'wheelDiameter_m'],
] as const;

/**
 * Holds the values of a plate against each other: what agrees grows more likely, what is likelier read another way changes
 * place, and what contradicts is named.
 */
export function witnessed(opinions: readonly Opinion[], isInput: boolean): Witnessed {
  const electrical = weighElectrical(opinions, isInput);
  const mechanical = weighMechanical(electrical.opinions, isInput);
  return {
    opinions: mechanical.opinions,
    contradictions: [...electrical.contradictions, ...mechanical.contradictions],
  };
}

function weighElectrical(opinions: readonly Opinion[], isInput: boolean): Witnessed {
  const one = (field: FieldName) => choicesOf(opinions, field, (parts) => parts[0]!);
  const list = (field: FieldName) => choicesOf(opinions, field, (parts) => parts);
  const speed_rpm = likeliest(opinions, 'speed_rpm');
  const frequency_Hz = likeliest(opinions, 'frequency_Hz');
  // a blower's plate gives the mass of the whole
  const isMotor = !isInput && !opinions.some(({ field }) => field === 'flow_m3_s' || field === 'pressure_Pa');
  const motorMass_kg = isMotor ? likeliest(opinions, 'mass_kg') : null;
  const choices = {
    ratedPower_W: one('ratedPower_W'),
    voltage_V: list('voltage_V'),
    current_A: list('current_A'),
    powerFactor: one('powerFactor'),
    efficiency: one('efficiency'),
    phases: one('phases') as Choice<1 | 3>[],
  };
  const said = weighedTogether(choices, (values) => {
    const electrical = values as Electrical;
    return [
      powerAgreement(electrical, { speed_rpm, frequency_Hz, isInput }),
      pairAgreement(electrical),
      massAgreement(electrical.ratedPower_W, motorMass_kg),
    ];
  });
  return afterwards(opinions, said, ELECTRICAL);
}

function weighMechanical(opinions: readonly Opinion[], isInput: boolean): Witnessed {
  const one = (field: FieldName) => choicesOf(opinions, field, (parts) => parts[0]!);
  const choices = {
    speed_rpm: one('speed_rpm'),
    frequency_Hz: one('frequency_Hz'),
    ratedPower_W: one('ratedPower_W'),
    flow_m3_s: one('flow_m3_s'),
    pressure_Pa: one('pressure_Pa'),
    wheelDiameter_m: one('wheelDiameter_m'),
  };
  const said = weighedTogether(choices, (v) => [
    speedAgreement(v.speed_rpm, v.frequency_Hz),
    airAgreement(v.ratedPower_W, v.flow_m3_s, v.pressure_Pa, isInput),
    tipAgreement(v.speed_rpm, v.wheelDiameter_m, v.pressure_Pa),
  ]);
  return afterwards(opinions, said, MECHANICAL);
}

function choicesOf<Value>(
  opinions: readonly Opinion[],
  field: FieldName,
  pick: (parts: number[]) => Value,
): Choice<Value>[] {
  const opinion = opinions.find((o) => o.field === field);
  const known = (opinion?.choices ?? []).map(({ value, share }) => ({
    value: pick((value.parts as number[]).slice(0, value.inFirst)),
    share,
  }));
  const rest = 1 - known.reduce((sum, { share }) => sum + share, 0);
  return [...known, { value: null, share: Math.max(rest, 1e-4) }];
}

function likeliest(opinions: readonly Opinion[], field: FieldName): number | null {
  const value = opinions.find((o) => o.field === field)?.choices[0]?.value.parts[0];
  return typeof value === 'number' ? value : null;
}

function afterwards(
  opinions: readonly Opinion[],
  { shares, atOdds }: { shares: Readonly<Record<string, readonly number[]>>; atOdds: readonly number[] },
  pairs: readonly (readonly FieldName[])[],
): Witnessed {
  return {
    opinions: opinions.map((opinion) => {
      const own = shares[opinion.field];
      if (!own) return opinion;
      const choices = opinion.choices
        .map(({ value }, i) => ({ value, share: own[i]! }))
        .toSorted((a, b) => b.share - a.share);
      return { ...opinion, choices };
    }),
    contradictions: pairs.map((fields, i) => ({ fields, chance: atOdds[i] ?? 0 })),
  };
}
