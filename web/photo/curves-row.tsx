import { Icon } from '../drawings/icons.tsx';
import { removeTap, setTapSpeed } from '../edits/tap-curve.ts';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { endStep } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { sayNumber } from '../words/say.ts';
import type { Reader } from './chart-reading.ts';
import type { PhotoWork } from './photo-work.ts';
import { doubtsAt, Step, type Change } from './step.tsx';

export function CurvesRow({
  work,
  ready,
  reader,
  change,
}: {
  work: PhotoWork;
  ready: boolean;
  reader: Reader;
  change: Change;
}) {
  const t = texts.value.photo;
  const { reading, step } = reader;
  // curves that were tapped are doubted by their tap, those that were found by their place in the answer
  const doubtAbout = (index: number): string | undefined =>
    [...doubtsAt(reading, `/seeds/${index}`), ...doubtsAt(reading, `/curves/${index}`)][0];
  const doubted = work.seeds.some((_, index) => doubtAbout(index) !== undefined);
  const title = work.seeds.length === 0 ? t.tapOpen : t.curves(work.seeds.length, sayNumber(work.seeds.length));
  const hint = step ? t.tracing : work.seeds.length === 0 ? (ready ? t.tapNow : t.tapAfter) : t.tapMore;
  return (
    <Step mark={work.seeds.length === 0 || !reading ? 'open' : doubted ? 'doubt' : 'done'} title={title} hint={hint}>
      {work.seeds.map((seed, index) => (
        <div key={seed.id} class="seed-row">
          <svg width="30" height="12" aria-hidden="true">
            <path
              d="M0 6H30"
              class="on-photo-air sample"
              stroke-width="3"
              stroke-dasharray={seed.yAxis === 'y1' ? undefined : '8 5'}
            />
          </svg>
          <QuantityBox
            label={t.speedOf(
              t.quantities[work.axes.find((axis) => axis.id === seed.yAxis)?.quantity ?? 'static_pressure'],
            )}
            quantity="speed"
            unit="rpm"
            text={seed.speedText}
            help={doubtAbout(index) ?? (seed.speedText === '' ? t.speedHelp : undefined)}
            onText={(text) => change('curves', setTapSpeed(seed.id, text), `speed ${seed.id}`)}
            onLeave={endStep}
          />
          <button
            type="button"
            class="icon"
            aria-label={t.removeCurve(String(index + 1))}
            onClick={() => change('curves', removeTap(seed.id))}
          >
            <Icon name="bin" />
          </button>
        </div>
      ))}
    </Step>
  );
}
