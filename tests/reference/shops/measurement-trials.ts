import { measurementsToTake } from '../../../src/advice/measure-next.ts';
import { checkJob } from '../../../src/job/check.ts';
import type { Job } from '../../../src/job/types.ts';
import { judge } from '../../../src/judge.ts';
import { checked } from '../rigs/judged.ts';
import { randomFrom } from '../rigs/random.ts';
import { inventShop } from './invent-shop.ts';
import { measuredIn } from './measured.ts';

/** An unsure blower, and what each advised measurement would have made of its verdict; the first is the advice. */
export type MeasurementTrial = { index: number; advice: { measurement: string; promised: number; settles: boolean }[] };

/** The advice for every unsure blower in shops `first` to `first + count`, each measurement done in turn on its own. */
export function measurementTrials(seed: number, first: number, count: number): MeasurementTrial[] {
  return Array.from({ length: count }, (_, i) => first + i).flatMap((index): MeasurementTrial[] => {
    const shop = inventShop(seed, index);
    if (shop.find.tested === null && shop.find.mix.startsWith('readings')) return [];
    const job = checked(shop.find);
    const judgement = judge(job);
    if (judgement.assessment.blowers[0]!.verdict !== 'unsure') return [];
    const advice = measurementsToTake(job, judgement, 0).map((m) => {
      const done = checkJob(measuredIn(shop, structuredClone(job) as Job, m, randomFrom(seed + 75, index)));
      if (!done.ok) throw new Error(JSON.stringify(done.issues));
      const settles = judge(done.value).assessment.blowers[0]!.verdict !== 'unsure';
      return { measurement: m.measurement, promised: m.expectedDoubtRemoved, settles };
    });
    return advice.length < 2 ? [] : [{ index, advice }];
  });
}

/** Verdicts settled by the first measurement, and by one of the list taken blindly (its expectation). */
export function settled(trials: readonly MeasurementTrial[]): { first: number; atRandom: number } {
  const share = (of: readonly { settles: boolean }[]) => of.filter((m) => m.settles).length / of.length;
  return {
    first: trials.filter((t) => t.advice[0]!.settles).length,
    atRandom: trials.reduce((sum, t) => sum + share(t.advice), 0),
  };
}
