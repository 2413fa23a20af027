import type { ChartReading, Problem } from '../api.ts';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { endStep } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';
import { sayNumber } from '../words/say.ts';
import type { PhotoWork } from './photo-work.ts';
import { problemWords } from './problem-words.ts';
import { doubtsAt, Step, type Change } from './step.tsx';

export function CornersRow({ work, reading }: { work: PhotoWork; reading: ChartReading | null }) {
  const t = texts.value.photo;
  const left = work.placed.filter((placed) => !placed).length;
  const doubts = doubtsAt(reading, '/frameCorners_px');
  if (left > 0) return <Step mark="open" title={t.cornersOpen} hint={t.cornersLeft(sayNumber(left))} />;
  return (
    <Step
      mark={doubts.length > 0 ? 'doubt' : 'done'}
      title={t.cornersDone}
      hint={doubts[0] ?? (reading ? t.snapped : t.cornersHint)}
    />
  );
}

export function AirRow({ work, change }: { work: PhotoWork; change: Change }) {
  const t = texts.value.photo;
  return (
    <Step mark={work.airDensityText.trim() === '' ? 'doubt' : 'done'} title={t.air} hint={t.airHint}>
      <div class="air-field">
        <QuantityBox
          label={texts.value.blowers.airWeight}
          quantity="density"
          unit="kg/m³"
          text={work.airDensityText}
          placeholder="1.2 kg/m³"
          labelUnseen
          onText={(text) => change('air', (before) => ({ ...before, airDensityText: text }), 'air')}
          onLeave={endStep}
        />
      </div>
    </Step>
  );
}

/** What stands in the way of using it, or has to be looked at before. */
export function ReviewRow({ reading, problem }: { reading: ChartReading | null; problem: Problem | null }) {
  const t = texts.value.photo;
  if (problem) {
    const words = problem.errors.map((error) => error.message);
    return (
      <div class="box review" role="alert">
        <h2 class="small-head">{t.notRead}</h2>
        <p>{words.length > 0 ? words.join(' ') : problemWords(problem, texts.value)}</p>
      </div>
    );
  }
  if (!reading?.confidence.needsReview) return null;
  return (
    <div class="box review" role="status">
      <h2 class="small-head">{t.lookAgain}</h2>
      <ul>
        {[...new Set(reading.warnings.map((warning) => warningWords(warning, texts.value)))].map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </div>
  );
}
