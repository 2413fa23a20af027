import type { LossPart } from './elements/element.ts';
import { elementKind, type Element } from './elements/index.ts';
import type { FlowState } from './flow-state.ts';
import type { PlacedTerm } from './placed-terms.ts';
import { termLoss_Pa } from './term-loss.ts';

/** Parts of a pressure budget, from the machine to the open air. */
export const LOSS_PARTS = [
  'hood',
  'hose',
  'pipe',
  'bends',
  'cyclone',
  'filters',
  'other',
  'way-out',
] as const satisfies LossPart[];

/** Where the blower's total pressure goes along one way. */
export type PressureBudget = {
  /** section of the machine at which the way begins */
  pickupId: string;
  /** every part, zeros included; they add up to suction + way out, the fan's total pressure at its operating point */
  parts: { part: LossPart; pressure_Pa: number }[];
};

/**
 * Every way from the room to the blower loses the same (that is what shares the air), so the worst one is the machine that
 * gets least of what it needs; where nothing is asked for, the one with the least flow.
 * @returns index of the section, −1 when no machine is open
 */
export function worstPickup({ network, sectionFlow_m3_s }: FlowState): number {
  let [worst, least] = [-1, Infinity];
  const asked = network.sections.some(({ pickup }, i) => network.open[i] === 1 && (pickup?.requiredFlow_m3_s ?? 0) > 0);
  network.sections.forEach(({ pickup }, i) => {
    if (network.open[i] !== 1) return;
    const required_m3_s = pickup?.requiredFlow_m3_s ?? 0;
    if (asked && required_m3_s === 0) return;
    const share = sectionFlow_m3_s[i]! / (asked ? required_m3_s : 1);
    if (share < least) [worst, least] = [i, share];
  });
  return worst;
}

/** Behind the blower everything but cyclone and filters is the way out. */
function dischargePart({ element, part }: PlacedTerm, discharge: readonly Element[]): LossPart {
  const kind = discharge[element]?.kind;
  return kind !== undefined && elementKind(kind).catchesDust === true ? part : 'way-out';
}

/**
 * Splits the loss of the way from one machine to the open air by what causes it [Pa].
 * @param state  a solved state
 * @param pickup index of the machine's section; left out, the worst one
 * @returns null when no machine is open
 */
export function pressureBudget(state: FlowState, pickup: number = worstPickup(state)): PressureBudget | null {
  const { network, sectionFlow_m3_s } = state;
  const section = network.sections[pickup];
  if (section === undefined || network.open[pickup] !== 1) return null;
  const sums = new Map<LossPart, number>(LOSS_PARTS.map((part) => [part, 0]));
  const book = (part: LossPart, { term }: PlacedTerm, flow_m3_s: number): void => {
    sums.set(part, sums.get(part)! + termLoss_Pa(term, flow_m3_s, network.air));
  };
  for (let i = pickup; i >= 0; i = network.target[i]!) {
    for (const placed of network.terms[i]!) book(placed.part, placed, sectionFlow_m3_s[i]!);
  }
  for (const placed of network.terms[network.sections.length]!) {
    book(dischargePart(placed, network.discharge), placed, state.totalFlow_m3_s);
  }
  return { pickupId: section.id, parts: [...sums].map(([part, pressure_Pa]) => ({ part, pressure_Pa })) };
}
