import { useSignal } from '@preact/signals';
import type { Blower } from '../../src/job/types.ts';
import { OpenMark, VerdictMark } from '../drawings/marks.tsx';
import { removeBlower } from '../edits/remove-blower.ts';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { TextInput } from '../forms/text-input.tsx';
import { wide } from '../frame/wide.ts';
import { TopBar } from '../frame/top-bar.tsx';
import { answered } from '../state/assessment.ts';
import { job, perform } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { chanceWords } from '../words/verdict-line.ts';
import { blowerTitle } from './blower-words.ts';
import { CurvePart } from './curve-part.tsx';
import { DrivePart } from './drive-part.tsx';
import { EvidencePart } from './evidence-part.tsx';
import { MotorPart } from './motor-part.tsx';
import { PricePart } from './price-part.tsx';
import { WheelPart } from './wheel-part.tsx';
import { WorstDayPart } from './worst-day-part.tsx';

/** One blower: what is known of it and the curve that follows, then its wheel, drive and motor. */
export function BlowerPage({ blowerId }: { blowerId: string }) {
  const t = texts.value;
  const index = job.value.blowers.findIndex((b) => b.id === blowerId);
  const blower = job.value.blowers[index];
  if (!blower) return null;
  const path = `/blowers/${index}`;
  return (
    <div class="blower">
      <TopBar title={blowerTitle(blower, t)} back={wide.value ? undefined : { page: 'blowers' }} />
      <Verdict blower={blower} />
      <CurvePart blower={blower} />
      <EvidencePart blower={blower} path={path} />
      <WheelPart blower={blower} path={path} />
      <DrivePart blower={blower} path={path} />
      <MotorPart blower={blower} path={path} />
      <WorstDayPart blower={blower} path={path} />
      <section class="part">
        <h2>{t.blowers.nameAndPrice}</h2>
        <div class="fields named">
          <TextInput path={`${path}/label`} label={t.blowers.label} note="name" placeholder={t.blowers.labelExample} />
          <PricePart blower={blower} path={path} />
          <QuantityInput
            path={`${path}/outletArea_m2`}
            quantity="area"
            label={t.blowers.outletArea}
            note="wheel"
            help={t.blowers.outletAreaHelp}
          />
        </div>
      </section>
      <Remove blower={blower} />
    </div>
  );
}

function Verdict({ blower }: { blower: Blower }) {
  const t = texts.value;
  const result = answered.value?.assessment.blowers.find((b) => b.blowerId === blower.id);
  return (
    <p class="blower-verdict" aria-live="polite">
      {result ? <VerdictMark verdict={result.verdict} size={24} /> : <OpenMark size={24} />}
      <b>{result ? t.verdict[result.verdict] : t.common.working}</b>
      {result && <span>{chanceWords(result.probability, t)}</span>}
    </p>
  );
}

function Remove({ blower }: { blower: Blower }) {
  const asking = useSignal(false);
  const t = texts.value;
  const remove = (): void => {
    go({ page: 'blowers' }, 'replace');
    perform(removeBlower(job.value, blower.id));
  };
  if (!asking.value) {
    return (
      <button type="button" class="tap" onClick={() => (asking.value = true)}>
        {t.blowers.remove}
      </button>
    );
  }
  return (
    <div class="actions">
      <button type="button" class="press" onClick={remove}>
        {t.blowers.reallyRemove}
      </button>
      <button type="button" class="press" onClick={() => (asking.value = false)}>
        {t.common.cancel}
      </button>
    </div>
  );
}
