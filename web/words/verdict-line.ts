import type { Assessment, BlowerResult, Case, Verdict } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import type { Texts } from '../texts/en.ts';
import { chanceOf } from './chance.ts';

/** The verdict of the best blower in one line: its mark, the few words that matter, and why. */
export type VerdictLine = { mark: Verdict | null; lead: string; rest: string };

export function verdictLine(job: Job, assessment: Assessment, texts: Texts): VerdictLine {
  const best = [...assessment.blowers].sort((a, b) => a.rank - b.rank)[0];
  if (!best) return { mark: null, lead: texts.verdict.noBlower, rest: '' };
  const name = blowerName(job, best.blowerId);
  const lead =
    job.blowers.length > 1 && name
      ? `${name}: ${lower(texts.verdict[best.verdict])}`
      : `${texts.verdict[best.verdict]}`;
  return { mark: best.verdict, lead, rest: whyOf(job, assessment, best, texts) };
}

export const blowerName = (job: Job, blowerId: string): string =>
  job.blowers.find((b) => b.id === blowerId)?.label ?? '';

/** The name of a section for people: its machine, its own label, or its id. */
export const sectionName = (job: Job, id: string): string => {
  const section = job.ductwork.sections.find((s) => s.id === id);
  return section?.label ?? section?.pickup?.machine ?? id;
};

export function chanceWords(probability: number, texts: Texts): string {
  const { n, of } = chanceOf(probability);
  return texts.verdict.chance(String(n), String(of));
}

function whyOf(job: Job, assessment: Assessment, best: BlowerResult, texts: Texts): string {
  const chance = chanceWords(best.probability, texts);
  if (best.verdict === 'yes') return chance;
  const worst = weakestCase(assessment, best.blowerId);
  if (!worst) return chance;
  const shortest = worst.pickups.filter((p) => p.open).sort((a, b) => a.probability - b.probability)[0];
  const settling = worst.sections.find((s) => s.judged && !s.ok);
  if (shortest && shortest.probability < 0.95) return texts.verdict.for(sectionName(job, shortest.id), chance);
  if (settling) return texts.verdict.settlesIn(sectionName(job, settling.id));
  if ((worst.motor.probabilityWithinRating ?? 1) < 0.95) return texts.verdict.motor;
  return chance;
}

const weakestCase = (assessment: Assessment, blowerId: string): Case | undefined =>
  assessment.cases
    .filter((c) => c.blowerId === blowerId && c.required)
    .sort((a, b) => a.probability - b.probability)[0];

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
