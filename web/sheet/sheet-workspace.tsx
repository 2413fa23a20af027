import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { ReadingsEvidence } from '../../src/job/types.ts';
import { changeSheet, sayHead } from '../edits/change-sheet.ts';
import { needsPipe, takeSheet } from '../edits/take-sheet.ts';
import { ReadingProblem } from '../photo/reading-problem.tsx';
import { WhileReading } from '../photo/while-reading.tsx';
import { outlineOfSheet, turnOfTable } from './sheet-place.ts';
import { PlateStage } from '../plate/plate-stage.tsx';
import { editDoc, halfTyped, job, perform } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { unitFor } from '../words/say.ts';
import { HEAD_FORMS } from './column-forms.ts';
import { DoubtBox } from './doubt-box.tsx';
import { HeadFields } from './head-fields.tsx';
import { SheetWarnings } from './sheet-words.tsx';
import { sheetReader } from './sheet-reader.ts';
import type { HeadQuantity } from './sheet-reading.ts';
import { SheetTable } from './sheet-table.tsx';
import { cellKey, type SheetWork } from './sheet-work.ts';
import { shownHead } from './shown-head.ts';
import { doubtsOf, shownCells, shownColumns, type Doubt } from './shown-sheet.ts';
import { takenHead, takenRows } from './taken-sheet.ts';
import { UseSheet } from './use-sheet.tsx';

type Props = { blowerId: string; index: number; work: SheetWork };

/** Barometers are not read in the units of a tube. */
const HEAD_UNITS: { readonly [Name in HeadQuantity]?: string } = { barometer_Pa: 'hPa' };

/**
 * The sheet above, its table below with each figure under its piece of the photo. What is doubted comes up at the foot, one after
 * the other, large beside its print; a tap on any other figure brings that one up.
 */
export function SheetWorkspace({ blowerId, index, work }: Props) {
  const t = texts.value.sheet;
  const picked = useSignal<Doubt | null>(null);
  const { photoId, reading } = work;
  const change = (how: (before: SheetWork) => SheetWork, merge: string | null = null): void =>
    editDoc('sheet', (before) => changeSheet(before, photoId, how), merge && `sheet ${photoId} ${merge}`);
  const read = (): void => sheetReader.read(photoId, (found) => change((before) => ({ ...before, reading: found })));
  const isAwaited = reading === null;
  useEffect(() => {
    if (isAwaited) read();
    return sheetReader.stop;
  }, [photoId, isAwaited]);

  const { step, problem } = sheetReader.progress.value;
  const notebook = job.value.blowers.find(({ id }) => id === blowerId)?.evidence[index] as ReadingsEvidence;
  const columns = shownColumns(work);
  const cells = shownCells(work);
  const doubts = doubtsOf(columns, cells);
  const quantities = columns.flatMap(({ quantity }) => quantity ?? []);
  const wantsPipe = needsPipe(quantities) && notebook.rig.pipeDiameter_m == null;
  const head = shownHead(
    work,
    wantsPipe ? ['ductDiameter_m'] : [],
    (name) => HEAD_UNITS[name] ?? unitFor(HEAD_FORMS[name]),
  );
  const at = picked.value ?? doubts[0] ?? null;
  const turn_deg = turnOfTable(reading?.cells ?? []);
  const back = (): void => go({ page: 'readings', blowerId, index });

  const use = (): void => {
    const taken = takeSheet(job.value, {
      blowerId,
      index,
      photoId,
      rows: takenRows(columns, cells),
      head: takenHead(head),
    });
    perform(taken);
    halfTyped.value = { ...halfTyped.value, ...taken.halfTyped };
    go({ page: 'readings', blowerId, index: taken.index });
  };
  return (
    <div class="workspace">
      <PlateStage
        photo={work}
        alt={t.photoAlt}
        outline={outlineOfSheet(reading)}
        places={cells
          .flat()
          .flatMap(({ row, column, cell }) =>
            cell ? [{ id: cellKey(row, column), box: cell.box_px, doubted: false }] : [],
          )}
        at={at && at.row !== null ? cellKey(at.row, at.column) : null}
        isOnlyOne
        onTap={(key) => {
          const [row = 0, column = 0] = key.split(',').map(Number);
          picked.value = { row, column };
        }}
      />
      <div class="figures">
        {isAwaited && !problem && (
          <WhileReading
            steps={Object.entries(t.steps).map(([name, text]) => ({ name, text }))}
            step={step ?? ''}
            stop={t.byHand}
            onStop={back}
          />
        )}
        {isAwaited && problem && (
          <ReadingProblem problem={problem} words={t} byHand={t.byHand} onAgain={read} onByHand={back} />
        )}
        {reading && (
          <>
            <SheetWarnings reading={reading} />
            <HeadFields
              head={head}
              notebook={notebook}
              photo={work}
              turn_deg={turn_deg}
              onSay={(name, said, merge) => change(sayHead(name, said), merge)}
            />
            <SheetTable
              columns={columns}
              cells={cells}
              photo={work}
              turn_deg={turn_deg}
              at={at}
              onPick={(place) => (picked.value = place)}
            />
            <UseSheet
              columns={columns}
              cells={cells}
              waiting={doubts.length + head.filter(({ isAsked }) => isAsked).length}
              wantsPipe={wantsPipe && !head.some(({ name, value }) => name === 'ductDiameter_m' && value !== null)}
              onUse={use}
            />
            {at && (
              <DoubtBox
                key={`${at.row},${at.column}`}
                at={at}
                left={doubts.length}
                work={work}
                columns={columns}
                cells={cells}
                turn_deg={turn_deg}
                change={change}
                onNext={() => (picked.value = null)}
              />
            )}
          </>
        )}
        <button type="button" class="tap" onClick={() => go({ page: 'sheet', blowerId, index, photoId: null })}>
          {texts.value.plate.retake}
        </button>
      </div>
    </div>
  );
}
