import { judge } from '../../../src/judge.ts';
import { idealCases } from '../rigs/ideal-observer.ts';
import { checked } from '../rigs/judged.ts';
import { inventShop } from './invent-shop.ts';
import { trulyHolds } from './truth.ts';

/** One gate plan of an invented shop: what the program said, and what is true. */
export type VerdictTrial = {
  index: number;
  mix: string;
  plan: string;
  electrical: string;
  family: string;
  verdict: 'yes' | 'no' | 'unsure';
  chance: number;
  holds: boolean;
  /** what somebody would say who knows every error's size and every family's level; null where not asked */
  ideal: 'yes' | 'no' | 'unsure' | null;
};

/** Every plan of shops `first` to `first + count`. */
export function verdictTrials(seed: number, first: number, count: number, withIdeal = false): VerdictTrial[] {
  return Array.from({ length: count }, (_, i) => first + i).flatMap((index) => {
    const shop = inventShop(seed, index);
    const { find } = shop;
    if (find.tested === null && find.mix.startsWith('readings')) return [];
    const job = checked(find);
    const ideal = new Map(withIdeal ? idealCases(find).map((c) => [c.gatePlan, c.verdict]) : []);
    const cases = judge(job).assessment.cases.filter((c) => c.filterState === 'clean');
    return cases.map((c) => ({
      index,
      mix: find.mix,
      electrical: find.electrical,
      family: find.family,
      plan: c.gatePlan,
      verdict: c.verdict,
      chance: c.probability,
      holds: trulyHolds(shop, job, c.gatePlan),
      ideal: ideal.get(c.gatePlan) ?? null,
    }));
  });
}

export type VerdictTally = {
  cases: number;
  yes: number;
  wrongYes: number;
  no: number;
  wrongNo: number;
  unsure: number;
  /** how far stated chances are from what held, weighted over ten bins [-] */
  off: number;
};

/** How often the verdicts of these trials were wrong or left open, and how true their chances were. */
export function verdictTally(trials: readonly VerdictTrial[]): VerdictTally {
  const yes = trials.filter((t) => t.verdict === 'yes');
  const no = trials.filter((t) => t.verdict === 'no');
  const bins = Array.from({ length: 10 }, (_, b) => trials.filter((t) => Math.min(9, Math.floor(10 * t.chance)) === b));
  const missed = (bin: readonly VerdictTrial[]) => bin.reduce((sum, t) => sum + t.chance - (t.holds ? 1 : 0), 0);
  return {
    cases: trials.length,
    yes: yes.length,
    wrongYes: yes.filter((t) => !t.holds).length,
    no: no.length,
    wrongNo: no.filter((t) => t.holds).length,
    unsure: trials.length - yes.length - no.length,
    off: bins.reduce((sum, bin) => sum + Math.abs(missed(bin)), 0) / trials.length,
  };
}
