import type { Assessment, ChangeValues, Remedy } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { Judgement } from '../judge.ts';
import { formatNumber, formatQuantity } from '../units/format.ts';
import type { Change } from './change.ts';

/**
 * Puts changes that made a yes into words and numbers.
 * @param judgement of the job as it is
 * @param after     assessment of the changed job, of this blower alone
 */
export function remedyOf(
  judgement: Judgement,
  job: Job,
  index: number,
  changes: readonly Change[],
  after: Assessment,
): Remedy {
  const what = changes.map((c, i) => (i === 0 ? c.what : c.what[0]!.toLowerCase() + c.what.slice(1))).join('; and ');
  const outcome = outcomeOf(judgement, job, index, after);
  return {
    kind: changes.map((c) => c.kind).join('+'),
    text: `${what}. ${thenWords(outcome, job.blowers[index]!.id)}`,
    parts: changes.map(({ kind, values }) => ({ kind, values })),
    outcome,
    change: changes.flatMap((c) => c.patch),
    verdictAfter: 'yes',
    probabilityAfter: after.blowers[0]!.probability,
  };
}

/** The changed shop in its tightest numbers, and the same now: a machine's air, the motor's load. */
function outcomeOf(judgement: Judgement, job: Job, index: number, after: Assessment): ChangeValues {
  const blower = job.blowers[index]!.id;
  const worst = after.cases
    .filter((c) => c.required)
    .flatMap((c) => c.pickups.filter((p) => p.open && p.requiredFlow_m3_s).map((pickup) => ({ case: c, pickup })))
    .sort((a, b) => share(a.pickup) - share(b.pickup))[0];
  const now = judgement.assessment.cases
    .find((c) => c.blowerId === blower && worst && sameCase(c, worst.case))
    ?.pickups.find((p) => p.id === worst!.pickup.id);
  const load = (a: Assessment) =>
    a.blowers.find((b) => b.blowerId === blower)?.states.find((s) => s.state === 'highest-motor-load')?.value;
  const [loadThen, loadNow] = [load(after), load(judgement.assessment)];
  return {
    ...(worst && {
      machine: machineName(job, worst.pickup.id),
      flow_m3_s: worst.pickup.flow_m3_s,
      required_m3_s: worst.pickup.requiredFlow_m3_s!,
    }),
    ...(now && { flowNow_m3_s: now.flow_m3_s }),
    ...(loadThen != null && { load: loadThen }),
    ...(loadNow != null && { loadNow }),
  };
}

/** The same in a sentence. */
function thenWords(outcome: ChangeValues, blower: string): string {
  const number = (name: string) => outcome[name] as number;
  const flow = (name: string) => formatQuantity(number(name), 'm³/h');
  const percent = (name: string) => `${formatNumber(100 * number(name), 0)} %`;
  const now = (name: string, said: (name: string) => string) => (name in outcome ? ` (now ${said(name)})` : '');
  const words = [
    ...('machine' in outcome
      ? [
          `The ${outcome['machine']} then gets ${flow('flow_m3_s')}${now('flowNow_m3_s', flow)} and needs ${flow('required_m3_s')}`,
        ]
      : []),
    ...('load' in outcome ? [`the motor carries ${percent('load')} at most${now('loadNow', percent)}`] : []),
  ].join('; ');
  return words === '' ? `Then blower ${blower} suits.` : `${words[0]!.toUpperCase()}${words.slice(1)}.`;
}

type Pickup = Assessment['cases'][number]['pickups'][number];
const share = (p: Pickup): number => p.flow_m3_s / p.requiredFlow_m3_s!;
const sameCase = (a: Assessment['cases'][number], b: Assessment['cases'][number]): boolean =>
  a.gatePlan === b.gatePlan && a.filterState === b.filterState;
const machineName = (job: Job, id: string): string =>
  job.ductwork.sections.find((s) => s.id === id)?.pickup?.machine ?? id;
