import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Blower } from '../../src/job/types.ts';
import { changePlate, chooseRating, sayFigure } from '../edits/change-plate.ts';
import { isOtherMotor, takePlate } from '../edits/take-plate.ts';
import { ReadingProblem } from '../photo/reading-problem.tsx';
import { WhileReading } from '../photo/while-reading.tsx';
import { editDoc, job, perform } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { unitFor } from '../words/say.ts';
import { AirRow } from './air-row.tsx';
import { turnOf } from './crop-view.ts';
import { FigureRow } from './figure-row.tsx';
import { KindRow } from './kind-row.tsx';
import { LeftOnPlate } from './left-on-plate.tsx';
import { meaningOf, motorKindOf } from './motor-kind.ts';
import { plateReader } from './plate-reader.ts';
import { PlateStage } from './plate-stage.tsx';
import { PlateWarnings } from './plate-words.tsx';
import { readAfterAll, type PlateWork } from './plate-work.ts';
import { RatingRow } from './rating-row.tsx';
import { chosenRating, isReady, kindOfPlate, shownFigures, type ShownFigure } from './shown-figures.ts';
import { UseButton } from './use-button.tsx';

/**
 * The photo above, and below it every figure beside the piece of the photo it came from. What the reader doubts is asked first;
 * nothing doubted goes into the job before somebody has said that it is right.
 */
export function PlateWorkspace({ blowerId, work }: { blowerId: string; work: PlateWork }) {
  const t = texts.value.plate;
  const lookedAt = useSignal<string | null>(null);
  const { photoId, reading } = work;
  const change = (how: (before: PlateWork) => PlateWork, merge: string | null = null): void =>
    editDoc('plate', (before) => changePlate(before, photoId, how), merge && `plate ${photoId} ${merge}`);
  const read = (): void => plateReader.read(photoId, (found) => change((before) => ({ ...before, reading: found })));
  const isAwaited = reading === null && !work.byHand;
  useEffect(() => {
    if (isAwaited) read();
    return plateReader.stop;
  }, [photoId, isAwaited]);

  const { step, problem } = plateReader.progress.value;
  const blower = job.value.blowers.find(({ id }) => id === blowerId)!;
  const { supply } = job.value;
  const figures = shownFigures(work, { supply, unitOf: (form) => form.unit ?? unitFor(form.quantity) });
  const { choices, chosen } = chosenRating(work, supply);
  const kind = kindOfPlate(reading);
  const motorKind = motorKindOf(work, figures, blower.motor.kind);
  const turn_deg = turnOf(reading?.corners_px ?? []);

  const taken = figures.filter(isReady).map(({ form: { name }, value, text }) => ({ name, value: value!, text }));
  const use = (): void => {
    perform(
      takePlate(job.value, {
        blowerId,
        photoId,
        kind,
        figures: taken,
        motorKind,
        powerMeaning: meaningOf(work),
        air: work.air ?? 'leave-out',
      }),
    );
    go({ page: 'blower', blowerId });
  };
  const row = (figure: ShownFigure) => (
    <FigureRow
      key={figure.form.name}
      photo={work}
      figure={figure}
      turn_deg={turn_deg}
      warnings={reading?.warnings ?? []}
      inJob={valueInJob(blower, figure)}
      isLookedAt={lookedAt.value === figure.form.name}
      onLook={() => (lookedAt.value = figure.form.name)}
      onSay={(said, merge) => change(sayFigure(figure.form.name, said), merge)}
    />
  );
  const asked = figures.filter(({ isAsked }) => isAsked);
  const sure = figures.filter(({ isAsked }) => !isAsked);
  return (
    <div class="workspace">
      <PlateStage
        photo={work}
        alt={t.photoAlt}
        outline={reading?.corners_px ?? []}
        places={figures.flatMap(({ form, field, standing }) =>
          field && field.box_px[2] > 0
            ? [{ id: form.name, box: field.box_px, doubted: standing === 'doubted' || standing === 'several' }]
            : [],
        )}
        at={lookedAt.value}
        onTap={(id) => {
          lookedAt.value = id;
          document.getElementById(`figure-${id}`)?.scrollIntoView({ block: 'center' });
        }}
      />
      <div class="figures">
        {isAwaited && !problem && (
          <WhileReading
            steps={Object.entries(t.steps).map(([name, text]) => ({ name, text }))}
            step={step ?? ''}
            stop={t.byHand}
            onStop={() => change((before) => ({ ...before, byHand: true }))}
          />
        )}
        {isAwaited && problem && (
          <ReadingProblem
            problem={problem}
            words={t}
            byHand={t.typeIt}
            onAgain={read}
            onByHand={() => change((before) => ({ ...before, byHand: true }))}
          />
        )}
        {!isAwaited && (
          <>
            <PlateWarnings reading={reading} />
            <RatingRow choices={choices} chosen={chosen} onChoose={(index) => change(chooseRating(index, choices))} />
            {asked.length > 0 && (
              <section class="part">
                <h2>{reading ? t.lookAtThese : t.typeThese}</h2>
                {asked.map(row)}
              </section>
            )}
            {sure.length > 0 && (
              <section class="part">
                <h2>{t.readSurely}</h2>
                {sure.map(row)}
              </section>
            )}
            <AirRow figures={figures} air={work.air} onChoose={(air) => change((before) => ({ ...before, air }))} />
            {kind === 'motor' && <KindRow motorKind={motorKind} meaning={meaningOf(work)} change={change} />}
            <LeftOnPlate reading={reading} photo={work} turn_deg={turn_deg} />
            {isOtherMotor(blower, { kind, figures: taken }) && <p class="second">{t.otherMotor}</p>}
            <UseButton figures={figures} air={work.air} onUse={use} />
          </>
        )}
        <div class="actions">
          <button type="button" class="tap" onClick={() => go({ page: 'plate', blowerId, photoId: null })}>
            {t.retake}
          </button>
          {work.byHand && (
            <button type="button" class="tap" onClick={() => change(readAfterAll)}>
              {t.readIt}
            </button>
          )}
        </div>
      </div>
    </div>
  );
}

/** What the job says of a figure now; undefined where it says nothing. */
function valueInJob({ motor, wheel }: Blower, { form }: ShownFigure): number | undefined {
  if (form.name === 'wheelDiameter_m') return wheel.diameter_m ?? undefined;
  const value = (motor as Record<string, unknown>)[form.name];
  return typeof value === 'number' ? value : undefined;
}
