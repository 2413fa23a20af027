import { useSignal } from '@preact/signals';
import type { BlowerResult, MeasureNext, Remedy } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import { Icon } from '../drawings/icons.tsx';
import { applyRemedy } from '../edits/apply-remedy.ts';
import { job, perform } from '../state/job.ts';
import { go } from '../state/route.ts';
import { settings } from '../state/settings.ts';
import type { Route } from '../state/route.ts';
import type { MatchTexts } from '../texts/en-match.ts';
import { digits } from '../words/say.ts';
import { chancePhrase } from './chance.ts';
import { sayShort } from './say.ts';

/** The one thing to do next: a measurement while in doubt, a change where it will not do; nothing where all is well. */
export function NextStep({ blower, texts }: { blower: BlowerResult; texts: MatchTexts }) {
  const measure = blower.verdict === 'unsure' ? blower.measureNext[0] : undefined;
  const remedy = blower.verdict === 'yes' ? undefined : blower.remedies[0];
  if (!measure && !remedy) return null;
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
  return (
    <button type="button" class="box fill next" onClick={() => go(placeToMeasure(job.value, measure))}>
      <span>
        {texts.next.measure} {short ?? measure.text}
        {short && <small>{inThisLanguage(measure.text)}</small>}
      </span>
      <Icon name="on" />
    </button>
  );
}

function Fix({ remedy, second, texts }: { remedy: Remedy; second: boolean; texts: MatchTexts }) {
  const done = useSignal(false);
  const t = texts.next;
  const act = () => {
    perform(applyRemedy(job.value, remedy));
    done.value = true;
  };
  return (
    <button type="button" class={second ? 'box next' : 'box fill next'} onClick={act}>
      <span>
        {second ? t.or : t.fix} {t.remedies[remedy.kind] ?? t.remedies['several']}
        <small>
          {done.value
            ? t.applied
            : `${inThisLanguage(remedy.text)} ${t.chanceAfter(chancePhrase(remedy.probabilityAfter, texts, digits))}.`}
        </small>
      </span>
      <Icon name={second ? 'plus' : 'on'} />
    </button>
  );
}

/** The core's whole sentences are English; in another language the short words and the chance stand alone. */
const inThisLanguage = (sentence: string): string => (settings.value.language === 'en' ? sentence : '');

/** Where the measured value is to be typed: the rows of readings, the blower, or the ducts. */
function placeToMeasure(job: Job, measure: MeasureNext): Route {
  const path = String(measure.detail['path'] ?? '');
  const [, blower, evidence] = /^\/blowers\/(\d+)(?:\/evidence\/(\d+))?/.exec(path) ?? [];
  const blowerId = job.blowers[Number(blower)]?.id;
  if (blowerId === undefined) return path.startsWith('/ductwork') ? { page: 'ducts' } : { page: 'blowers' };
  const isRows = evidence !== undefined && job.blowers[Number(blower)]?.evidence[Number(evidence)]?.kind === 'readings';
  return isRows ? { page: 'readings', blowerId, index: Number(evidence) } : { page: 'blower', blowerId };
}
