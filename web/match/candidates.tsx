import type { Assessment } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import { BladePicture } from '../drawings/blades.tsx';
import { VerdictMark } from '../drawings/marks.tsx';
import type { MatchTexts } from '../texts/en-match.ts';
import { digits, sayNumber } from '../words/say.ts';
import { chancePhrase } from './chance.ts';
import type { Names } from './names.ts';
import { mostAsked, planMachines, planViews } from './plans.ts';

type Props = {
  job: Job;
  assessment: Assessment;
  chosen: string;
  names: Names;
  texts: MatchTexts;
  onChoose: (id: string) => void;
};

/** All blowers of the job in the order of their rank, with price and the chance of their weakest plan. */
export function Candidates({ job, assessment, chosen, names, texts, onChoose }: Props) {
  const ranked = [...assessment.blowers].sort((a, b) => a.rank - b.rank);
  if (ranked.length < 2) return null;
  return (
    <section class="candidates">
      <h2>{texts.candidates.title}</h2>
      <div class="list" role="radiogroup" aria-label={texts.choose.blower}>
        {ranked.map((result) => {
          const blower = job.blowers.find((one) => one.id === result.blowerId);
          const weakest = mostAsked(planViews(assessment, result.blowerId));
          if (!blower) return null;
          return (
            <button
              key={result.blowerId}
              type="button"
              class="row"
              role="radio"
              aria-checked={result.blowerId === chosen}
              onClick={() => onChoose(result.blowerId)}
            >
              <BladePicture family={blower.wheel.family} size={44} />
              <span class="grow">
                <b>{blower.label ?? blower.id}</b>
                <small>
                  <VerdictMark verdict={result.verdict} size={18} /> {chancePhrase(result.probability, texts, digits)}{' '}
                  {weakest && texts.chance.for(planMachines(weakest, names, texts))}
                </small>
              </span>
              <span class="price">
                {blower.price ? (
                  <>
                    <b>{sayNumber(blower.price.amount)}</b>
                    <small>{blower.price.currency}</small>
                  </>
                ) : (
                  <small>{texts.candidates.noPrice}</small>
                )}
              </span>
            </button>
          );
        })}
      </div>
    </section>
  );
}
