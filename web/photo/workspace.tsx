import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Icon } from '../drawings/icons.tsx';
import { changePhoto } from '../edits/change-photo.ts';
import { moveCorners } from '../edits/move-corners.ts';
import { tapCurve } from '../edits/tap-curve.ts';
import { useCurves } from '../edits/use-curves.ts';
import { editDoc, job, perform, type Note } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { askReader, reader } from './chart-reading.ts';
import { densityOf, hintsOf, readyForTap, speedOf } from './hints.ts';
import { PhotoStage } from './photo-stage.tsx';
import type { AxisId, PhotoWork } from './photo-work.ts';
import type { PhotoPoint } from './view.ts';
import { AxisRow, SecondAxisRow } from './axis-row.tsx';
import { CurvesRow } from './curves-row.tsx';
import { AirRow, CornersRow, ReviewRow } from './rows.tsx';

/** The photo above, and below it what is still to be done, one line a step; every step is a step of undo. */
export function Workspace({ blowerId, work }: { blowerId: string; work: PhotoWork }) {
  const t = texts.value.photo;
  const tapsGoTo = useSignal<AxisId>('y1');
  const early = useSignal(false);
  const { photoId } = work;
  const change = (note: Note, how: (before: PhotoWork) => PhotoWork, merge: string | null = null): void =>
    editDoc(note, (before) => changePhoto(before, photoId, how), merge);

  const hints = hintsOf(work);
  const asked = JSON.stringify(hints);
  useEffect(() => askReader(photoId, hints), [asked, photoId]);
  const { reading, problem, busy } = reader.value;
  const target = work.axes.some((axis) => axis.id === tapsGoTo.value) ? tapsGoTo.value : 'y1';
  const ready = readyForTap(work, target);

  const onTap = (at: PhotoPoint): void => {
    early.value = !ready;
    if (ready) change('seed', tapCurve(at, target));
  };
  const use = (): void => {
    if (!reading) return;
    perform(useCurves(job.value, { blowerId, photoId, reading, airDensity_kg_m3: densityOf(work.airDensityText) }));
    go({ page: 'blower', blowerId });
  };
  const y2 = work.axes.find((axis) => axis.id === 'y2');
  return (
    <div class="workspace">
      <PhotoStage
        work={work}
        reading={reading}
        onCorners={(corners) => change('corners', moveCorners(corners))}
        onTap={onTap}
      />
      <div class="rows steps">
        {early.value && !ready && (
          <p class="box early" role="status">
            {t.tapLater}
          </p>
        )}
        <CornersRow work={work} reading={reading} />
        {work.axes
          .filter((axis) => axis.id !== 'y2')
          .map((axis) => (
            <AxisRow key={axis.id} axis={axis} reading={reading} change={change} />
          ))}
        <CurvesRow work={work} ready={ready} reader={reader.value} change={change} />
        <SecondAxisRow axis={y2 ?? null} reading={reading} tapsGoTo={tapsGoTo} change={change} />
        <AirRow work={work} change={change} />
        <ReviewRow reading={reading} problem={problem} />
        {reading && (
          <button type="button" class="box fill next use" disabled={busy} onClick={use}>
            <span>
              {t.use(reading.curves.length)}
              {work.seeds.some((seed) => speedOf(seed.speedText) === null) && <small>{t.speedMissing}</small>}
            </span>
            <Icon name="on" />
          </button>
        )}
      </div>
    </div>
  );
}
