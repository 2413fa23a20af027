import jsonPatch from 'fast-json-patch';
import { remediesFor } from '../../../src/advice/remedies.ts';
import { checkJob } from '../../../src/job/check.ts';
import { judge } from '../../../src/judge.ts';
import { checked } from '../rigs/judged.ts';
import { inventShop } from './invent-shop.ts';
import { trulyHolds } from './truth.ts';

/** A blower that falls short or may fall short, and what came of each change that was proposed. */
export type RemedyTrial = {
  index: number;
  verdict: 'no' | 'unsure';
  reasons: string[];
  remedies: { kind: string; text: string; probability: number; isYes: boolean; holds: boolean }[];
};

const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** The remedies of every blower in shops `first` to `first + count` that is no yes. */
export function remedyTrials(seed: number, first: number, count: number): RemedyTrial[] {
  return Array.from({ length: count }, (_, i) => first + i).flatMap((index): RemedyTrial[] => {
    const shop = inventShop(seed, index);
    const { find } = shop;
    if (find.tested === null && find.mix.startsWith('readings')) return [];
    const job = checked(find);
    const judgement = judge(job);
    const { verdict, reasons } = judgement.assessment.blowers[0]!;
    if (verdict === 'yes') return [];
    const remedies = remediesFor(job, judgement, 0).map(({ kind, text, change, probabilityAfter }) => {
      const changed = checkJob(jsonPatch.applyPatch(copy(job), copy(change) as never).newDocument);
      if (!changed.ok) throw new Error(`${kind}: ${JSON.stringify(changed.issues)}`);
      const after = judge(changed.value).assessment;
      const plans = after.cases.filter((c) => c.required && c.filterState === 'clean');
      return {
        kind,
        text,
        probability: probabilityAfter,
        isYes: after.blowers[0]!.verdict === 'yes',
        holds: plans.every((c) => trulyHolds(shop, changed.value, c.gatePlan)),
      };
    });
    return [{ index, verdict, reasons: reasons.filter((r) => r.severity !== 'note').map((r) => r.code), remedies }];
  });
}
