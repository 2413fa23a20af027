import { useSignal } from '@preact/signals';
import type { BlowerResult, MeasureNext, Remedy } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import { Icon } from '../drawings/icons.tsx';
import { applyRemedy } from '../edits/apply-remedy.ts';
import { advising } from '../state/assessment.ts';
import { job, perform } from '../state/job.ts';
import { go } from '../state/route.ts';
import type { Route } from '../state/route.ts';
import type { MatchTexts } from '../texts/en-match.ts';
import { digits } from '../words/say.ts';
import { measureWords, remedyWords } from './advice-words.ts';
import { chancePhrase } from './chance.ts';
import { firstWords } from './first-words.ts';
import { sayShort, saying } from './say.ts';

/** The one thing to do next: a measurement while in doubt, a change where it will not do; nothing where all is well. */
export function NextStep({ blower, texts }: { blower: BlowerResult; texts: MatchTexts }) {
  const measure = blower.verdict === 'unsure' ? blower.measureNext[0] : undefined;
  const remedy = blower.verdict === 'yes' ? undefined : blower.remedies[0];
  if (!measure && !remedy)
    return advising.value && blower.verdict !== 'yes' ? <p class="second seeking">{texts.next.seeking}</p> : null;
  return (
    <div class={measure && remedy ? 'next-steps two' : 'next-steps'}>
      {measure && <Measure measure={measure} texts={texts} />}
      {remedy && <Fix remedy={remedy} second={Boolean(measure)} texts={texts} />}
    </div>
  );
}

function Measure({ measure, texts }: { measure: MeasureNext; texts: MatchTexts }) {
  const row = measure.detail['row'] as { orificeDiameter_m?: number } | undefined;
  const short = texts.next.measurements[measure.measurement]?.(sayShort('length', row?.orificeDiameter_m));
  const how = measureWords(measure, saying, texts);
  return (
    <Step
      filled
      icon="on"
      lead={`${texts.next.measure} ${short ?? firstWords(how) ?? how}`}
      how={short || firstWords(measure.text) ? how : ''}
      whole={texts.next.whole}
      onAct={() => go(placeToMeasure(job.value, measure))}
    />
  );
}

function Fix({ remedy, second, texts }: { remedy: Remedy; second: boolean; texts: MatchTexts }) {
  const done = useSignal(false);
  const t = texts.next;
  const act = () => {
    perform(applyRemedy(job.value, remedy));
    done.value = true;
  };
  const after = `${t.chanceAfter(chancePhrase(remedy.probabilityAfter, texts, digits))}.`;
  return (
    <Step
      filled={!second}
      icon={second ? 'plus' : 'on'}
      lead={`${second ? t.or : t.fix} ${t.remedies[remedy.kind] ?? t.remedies['several']}`}
      note={done.value ? t.applied : after}
      how={remedyWords(remedy, saying, texts)}
      whole={t.whole}
      onAct={act}
    />
  );
}

type StepProps = {
  filled: boolean;
  icon: 'on' | 'plus';
  lead: string;
  note?: string;
  how: string;
  whole: string;
  onAct: () => void;
};

/** A box that wants an answer: what to do in a few words, and the whole instruction folded below when it is long. */
function Step({ filled, icon, lead, note, how, whole, onAct }: StepProps) {
  const short = firstWords(how);
  return (
    <div class={filled ? 'box fill step' : 'box step'}>
      <button type="button" class="step-act" onClick={onAct}>
        <span>
          {lead}
          {note && <small>{note}</small>}
          {how && !short && <small>{how}</small>}
        </span>
        <Icon name={icon} />
      </button>
      {short && (
        <details>
          <summary>
            {short} <u>{whole}</u>
          </summary>
          <p>{how}</p>
        </details>
      )}
    </div>
  );
}

/** Where the measured value is to be typed: the rows of readings, the blower, or the ducts. */
function placeToMeasure(job: Job, measure: MeasureNext): Route {
  const path = String(measure.detail['path'] ?? '');
  const [, blower, evidence] = /^\/blowers\/(\d+)(?:\/evidence\/(\d+))?/.exec(path) ?? [];
  const blowerId = job.blowers[Number(blower)]?.id;
  if (blowerId === undefined) return path.startsWith('/ductwork') ? { page: 'ducts' } : { page: 'blowers' };
  const isRows = evidence !== undefined && job.blowers[Number(blower)]?.evidence[Number(evidence)]?.kind === 'readings';
  return isRows ? { page: 'readings', blowerId, index: Number(evidence) } : { page: 'blower', blowerId };
}
