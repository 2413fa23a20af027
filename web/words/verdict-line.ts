import type { Assessment, Verdict } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import { chancePhrase } from '../match/chance.ts';
import { capital, namesIn } from '../match/names.ts';
import { planViews } from '../match/plans.ts';
import { verdictSentence } from '../match/sentence.ts';
import type { Texts } from '../texts/en.ts';
import { digits } from './say.ts';

/** The verdict in one line of the title block: its mark, whose it is (where there are several), and the sentence of the match. */
export type VerdictLine = { mark: Verdict | null; lead: string; rest: string };

/** @param blowerId the blower one is looking at; null for the best of all */
export function verdictLine(job: Job, assessment: Assessment, blowerId: string | null, texts: Texts): VerdictLine {
  const ranked = [...assessment.blowers].sort((a, b) => a.rank - b.rank);
  const blower = ranked.find((b) => b.blowerId === blowerId) ?? ranked[0];
  if (!blower) return { mark: null, lead: texts.verdict.noBlower, rest: '' };
  const label = job.blowers.find((b) => b.id === blower.blowerId)?.label;
  const sentence = verdictSentence(
    planViews(assessment, blower.blowerId),
    blower,
    namesIn(job, texts.match),
    texts.match,
  );
  const named = job.blowers.length > 1 && label;
  return { mark: blower.verdict, lead: named ? `${capital(label)}: ` : sentence, rest: named ? sentence : '' };
}

/** The machine at a pick-up, as people call it. */
export const machineName = (job: Job, id: string, texts: Texts): string => namesIn(job, texts.match).machine(id);

export const chanceWords = (probability: number, texts: Texts): string =>
  chancePhrase(probability, texts.match, digits);
