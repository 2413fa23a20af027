import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { ChartStep } from '../api.ts';
import { Icon } from '../drawings/icons.tsx';
import { changePhoto } from '../edits/change-photo.ts';
import { moveCorners } from '../edits/move-corners.ts';
import { moveTap, tapCurve } from '../edits/tap-curve.ts';
import { areUntold, useCurves } from '../edits/use-curves.ts';
import { editDoc, job, perform, type Note } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { AxisRow, SecondAxisRow } from './axis-row.tsx';
import { askReader, reader, stopReader } from './chart-reading.ts';
import { isWithin } from '../../src/picture/quad.ts';
import type { Corners } from './corners.ts';
import { curveUnder } from './curve-under.ts';
import { CurvesRow } from './curves-row.tsx';
import { densityOf, hintsOf, readyForTap, speedOf } from './hints.ts';
import { PhotoStage } from './photo-stage.tsx';
import { startWork, type AxisId, type PhotoWork } from './photo-work.ts';
import { AirRow, CornersRow, ReviewRow } from './rows.tsx';
import { shownWork, TAKEN_OVER, type Part } from './shown-work.ts';
import type { Change } from './step.tsx';
import type { PhotoPoint } from './view.ts';
import { WhileReading } from './while-reading.tsx';

const STEPS: readonly ChartStep[] = ['frame', 'labels', 'curves'];
const NOTES: Record<Part, Note> = { corners: 'corners', axes: 'axis', curves: 'seed', air: 'axis' };

/**
 * The photo above, and below it what was read, one line a step. All is read without being told; whatever is put right by
 * finger or key stays, and the rest is read anew. Every step is a step of undo.
 */
export function Workspace({ blowerId, work }: { blowerId: string; work: PhotoWork }) {
  const t = texts.value.photo;
  const tapsGoTo = useSignal<AxisId>('y1');
  const early = useSignal(false);
  const { photoId } = work;
  const hints = hintsOf(work);
  const asked = JSON.stringify(hints);
  useEffect(() => askReader(photoId, hints), [asked, photoId]);
  useEffect(() => stopReader, [photoId]);
  const { reading, problem, step } = reader.value;
  const shown = shownWork(work, reading);
  const change: Change = (part, how, merge = null) =>
    editDoc(
      NOTES[part],
      (before) => changePhoto(before, photoId, (said) => how({ ...said, ...TAKEN_OVER[part](shown) })),
      merge,
    );

  const target = shown.axes.some((axis) => axis.id === tapsGoTo.value) ? tapsGoTo.value : 'y1';
  const ready = readyForTap(shown, target);
  const onTap = (at: PhotoPoint): void => {
    const other = isWithin(shown.corners, at)
      ? undefined
      : reading?.otherFrames_px?.find((frame) => isWithin(frame, at));
    if (other) {
      change('corners', moveCorners(other as unknown as Corners));
      return;
    }
    const again = shown.seeds[curveUnder(reading?.curves ?? [], at, Math.max(work.width_px, work.height_px))];
    early.value = !ready && !again;
    if (again) change('curves', moveTap(again.id, at));
    else if (ready) change('curves', tapCurve(at, target));
  };
  const untold = reading !== null && areUntold(reading);
  const use = (): void => {
    if (!reading) return;
    perform(useCurves(job.value, { blowerId, photoId, reading, airDensity_kg_m3: densityOf(shown.airDensityText) }));
    go({ page: 'blower', blowerId });
  };
  const markByHand = (): void => {
    stopReader();
    const blank = startWork({ photoId, width_px: work.width_px, height_px: work.height_px });
    change('air', ({ airDensityText }) => ({ ...blank, airDensityText, byHand: true }));
  };
  const [x, y1, ...more] = shown.axes;
  const further = more.find((axis) => axis.id === 'y2') ?? null;
  return (
    <div class="workspace">
      <PhotoStage
        work={shown}
        reading={reading}
        isSearching={step !== null && !reading}
        onCorners={(corners) => change('corners', moveCorners(corners))}
        onTap={onTap}
      />
      <div class="rows steps">
        {step && !reading && (
          <WhileReading
            steps={STEPS.map((name) => ({ name, text: t.steps[name] }))}
            step={step}
            stop={t.byHand}
            onStop={markByHand}
          />
        )}
        {reading?.otherFrames_px && <p class="second">{t.otherPlots}</p>}
        {early.value && !ready && (
          <p class="box early" role="status">
            {t.tapLater}
          </p>
        )}
        {(reading || !step) && (
          <>
            <ReviewRow reading={reading} problem={problem} />
            <CornersRow work={shown} reading={reading} />
            {[x, y1].map((axis) => axis && <AxisRow key={axis.id} axis={axis} reading={reading} change={change} />)}
            <CurvesRow work={shown} ready={ready} reader={reader.value} change={change} />
            <SecondAxisRow axis={further} reading={reading} tapsGoTo={tapsGoTo} change={change} />
            {more.map(
              (axis) => axis !== further && <AxisRow key={axis.id} axis={axis} reading={reading} change={change} />,
            )}
            <AirRow work={shown} change={change} />
          </>
        )}
        {reading && (
          <button type="button" class="tap" onClick={markByHand}>
            {t.byHandInstead}
          </button>
        )}
        {untold && (
          <p class="box" role="status">
            {t.untoldCurves}
          </p>
        )}
        {reading && shown.seeds.length > 0 && (
          <button type="button" class="box fill next use" disabled={step !== null || untold} onClick={use}>
            <span>
              {t.use(reading.curves.length)}
              {shown.seeds.some((seed) => speedOf(seed.speedText) === null) && <small>{t.speedMissing}</small>}
            </span>
            <Icon name="on" />
          </button>
        )}
      </div>
    </div>
  );
}
