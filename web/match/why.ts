import type { Case, Reason, SectionResult } from '../../src/assessment.ts';
import type { Quantity } from '../../src/units/index.ts';
import type { MatchTexts } from '../texts/en-match.ts';
import type { Names } from './names.ts';
import { saidValues } from './said-values.ts';
import type { PlanView } from './plans.ts';

/** How numbers are written for this user: unit, digits, rounding (web/words/say.ts). */
export type Say = {
  quantity: (quantity: Quantity, si: number) => string;
  range: (quantity: Quantity, low: number, high: number) => string;
  percent: (share: number) => string;
  number: (value: number) => string;
};

/** The one line that carries the verdict of a plan: what it gets against what it needs, where dust settles, or the motor. */
export function whyLine(plan: PlanView, names: Names, say: Say, texts: MatchTexts): string {
  const one = plan.worst;
  const slow = slowest(one);
  const tight = tightest(one);
  const weak = [
    ...(tight && tight.probability < 0.95
      ? [{ chance: tight.probability, say: () => flowLine(plan, tight, names, say, texts) }]
      : []),
    ...one.reasons
      .filter((reason) => reason.code !== 'flow-short' && typeof reason.values['probability'] === 'number')
      .map((reason) => ({
        chance: Number(reason.values['probability']),
        say: () => reasonText(reason, names, say, texts),
      })),
  ].sort((a, b) => a.chance - b.chance)[0];
  if (weak) return weak.say();
  if (slow && !slow.ok) return settlesLine(slow, names, say, texts);
  const stop = one.reasons.find((reason) => reason.severity === 'stop');
  if (stop) return reasonText(stop, names, say, texts);
  if (tight) return flowLine(plan, tight, names, say, texts);
  return one.reasons.map((reason) => reasonText(reason, names, say, texts))[0] ?? '';
}

type Tight = Case['pickups'][number];

const tightest = (one: Case): Tight | null =>
  one.pickups
    .filter((pickup) => pickup.open && pickup.requiredFlow_m3_s !== null)
    .reduce<Tight | null>((a, b) => (a && a.probability <= b.probability ? a : b), null);

/** The judged section with least speed for its need. */
export const slowest = (one: Case): SectionResult | null =>
  one.sections
    .filter((section) => section.judged && section.velocity_m_s !== null && (section.minimumVelocity_m_s ?? 0) > 0)
    .reduce<SectionResult | null>(
      (a, b) => (a && a.velocity_m_s! / a.minimumVelocity_m_s! <= b.velocity_m_s! / b.minimumVelocity_m_s! ? a : b),
      null,
    );

function flowLine(plan: PlanView, tight: Tight, names: Names, say: Say, texts: MatchTexts): string {
  const t = texts.why;
  const range = say.range('flow', tight.flow95_m3_s[0], tight.flow95_m3_s[1]);
  const full = plan.worst.filterState === 'loaded';
  const gets =
    plan.open.length === 1
      ? (full ? t.getsFull : t.gets)(range)
      : (full ? t.shortestFull : t.shortest)(names.machine(tight.id), range);
  return `${gets} ${t.needs(say.quantity('flow', tight.requiredFlow_m3_s!))}`;
}

const settlesLine = (slow: SectionResult, names: Names, say: Say, texts: MatchTexts): string =>
  texts.why.settles(
    names.section(slow.id),
    say.quantity('velocity', slow.velocity_m_s!),
    say.quantity('velocity', slow.minimumVelocity_m_s!),
  );

/** A reason in the page's language, its numbers in the user's units; codes without own words keep the core's English. */
export function reasonText(reason: Reason, names: Names, say: Say, texts: MatchTexts): string {
  const own = texts.reasons[reason.code];
  if (!own) return reason.text;
  const words: Record<string, string> = {
    ...saidValues(reason.values ?? {}, say),
    machine: names.machine(reason.subject),
    section: names.section(reason.subject),
  };
  const said = own(words);
  // a reason raised without its numbers keeps the core's own sentence
  return said.includes('undefined') ? reason.text : said;
}
