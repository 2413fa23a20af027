import { useSignal } from '@preact/signals';
import type { Case } from '../../src/assessment.ts';
import { elementKind } from '../../src/duct/index.ts';
import type { Element } from '../../src/duct/index.ts';
import { Icon } from '../drawings/icons.tsx';
import { addKind, moveElement, removeElement } from '../edits/duct-elements.ts';
import { placesToJoin, removeSection, setInto } from '../edits/duct-machines.ts';
import { elementsOf, elementsPointer, WAY_OUT } from '../edits/duct-run.ts';
import { splitMain } from '../edits/duct-split.ts';
import { Either } from '../forms/either.tsx';
import { TextInput } from '../forms/text-input.tsx';
import { DangerStrip } from '../match/danger.tsx';
import { saying } from '../match/say.ts';
import type { Names } from '../match/names.ts';
import { edit, job, perform } from '../state/job.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { texts as allTexts } from '../texts/index.ts';
import { say } from '../words/say.ts';
import { AddMachine } from './add-machine.tsx';
import { ChoiceInput } from './choice-input.tsx';
import { ElementForm } from './element-form.tsx';
import { elementLine, kindName } from './element-line.ts';
import { KINDS } from './fields.ts';
import type { Place } from './layout.ts';
import { MachineFields } from './machine-fields.tsx';
import { SizePicks } from './size-picks.tsx';

type Props = {
  place: Place;
  shown: Case | null;
  names: Names;
  texts: DuctTexts;
  onPlace: (place: Place | null) => void;
};

/** The tapped run opened up: its size as sold, its machine, and every piece of it in the air's order. */
export function RunEditor({ place, shown, names, texts, onPlace }: Props) {
  const t = texts.piece;
  const run = place.section;
  const now = job.value;
  const section = now.ductwork.sections.find((one) => one.id === run);
  const isWayOut = run === WAY_OUT;
  if (!section && !isWayOut) return null;
  const index = now.ductwork.sections.findIndex((one) => one.id === run);
  const pointer = `/ductwork/sections/${index}`;
  const result = shown?.sections.find((one) => one.id === run);
  const settles = result && result.judged && !result.ok && result.velocity_m_s !== null;
  return (
    <section class="run-editor" aria-label={titleOf(run, section, names, t)}>
      <header>
        <h2>{titleOf(run, section, names, t)}</h2>
        <button type="button" class="icon" aria-label={allTexts.value.common.close} onClick={() => onPlace(null)}>
          <Icon name="close" size={22} />
        </button>
      </header>
      <SizePicks
        job={now}
        run={run}
        shown={shown}
        needed_m_s={result?.judged ? result.minimumVelocity_m_s : null}
        texts={texts}
      />
      {settles && (
        <DangerStrip>
          <b>
            {t.settles(
              saying.quantity('velocity', result.velocity_m_s!),
              saying.quantity('velocity', result.minimumVelocity_m_s ?? 0),
            )}
          </b>{' '}
          {t.settlesLong}
        </DangerStrip>
      )}
      {result?.judged && dustyRise(section?.elements ?? []) && <p class="second">{t.riser}</p>}
      {section?.pickup && <MachineFields section={section} pointer={pointer} texts={texts} />}
      {isWayOut && (
        <Either
          label={t.exhaust}
          value={now.ductwork.exhaust ?? 'outdoors'}
          options={[
            { value: 'outdoors' as const, text: t.outdoors },
            { value: 'returned' as const, text: t.returned },
          ]}
          onChoose={(exhaust) =>
            edit('discharge', (before) => ({ ...before, ductwork: { ...before.ductwork, exhaust } }))
          }
        />
      )}
      <Pieces run={run} chosen={place.index} texts={texts} onPlace={onPlace} />
      {section && (
        <>
          <div class="fields">
            {!section.pickup && (
              <TextInput path={`${pointer}/label`} label={t.label} note="section" placeholder={t.main} />
            )}
            <ChoiceInput
              path={`${pointer}/into`}
              label={t.joins}
              note="section"
              unsaid={null}
              options={placesToJoin(now, run).map((id) => ({
                value: id,
                text: id === 'blower' ? t.atBlower : names.section(id),
              }))}
              onChosen={(into) => perform(setInto(job.value, run, into))}
            />
          </div>
          <div class="actions">
            {section.pickup && <AddMachine copyOf={run} names={names} texts={texts} label={t.copy} onPlace={onPlace} />}
            <button
              type="button"
              class="press"
              onClick={() => {
                perform(removeSection(job.value, run));
                onPlace(null);
              }}
            >
              {section.pickup ? t.removeBranch : t.removeMain}
            </button>
          </div>
        </>
      )}
    </section>
  );
}

/** Whether dust has to climb here: a rising pipe before anything that catches it. */
function dustyRise(elements: readonly Element[]): boolean {
  const caught = elements.findIndex((element) => elementKind(element.kind).catchesDust);
  const dusty = caught < 0 ? elements : elements.slice(0, caught);
  return dusty.some((element) => element.kind === 'pipe' && (element.rise_m ?? 0) > 0);
}

const titleOf = (
  run: string,
  section: { pickup?: unknown } | undefined,
  names: Names,
  t: DuctTexts['piece'],
): string => {
  if (run === WAY_OUT) return t.wayOut;
  return section?.pickup ? t.from(names.machine(run)) : capital(names.section(run));
};
const capital = (text: string): string => text.charAt(0).toLocaleUpperCase() + text.slice(1);

/** The pieces of a run in the air's order; the chosen one is open. */
function Pieces({
  run,
  chosen,
  texts,
  onPlace,
}: {
  run: string;
  chosen: number | null;
  texts: DuctTexts;
  onPlace: (place: Place | null) => void;
}) {
  const t = texts.piece;
  const elements = elementsOf(job.value, run);
  const pointer = elementsPointer(job.value, run);
  const adding = useSignal(false);
  const isMain = job.value.ductwork.sections.some((section) => section.id === run && !section.pickup);
  const add = (kind: Element['kind']) => {
    const added = addKind(job.value, run, kind);
    perform(added);
    adding.value = false;
    onPlace({ section: run, index: added.index });
  };
  return (
    <div class="pieces">
      <h3>{t.pieces}</h3>
      <ol>
        {elements.map((element, index) => {
          const open = index === chosen;
          const { name, figure } = elementLine(element, texts, (quantity, si, unit) => say(quantity, si, unit));
          return (
            <li key={index} class={open ? 'open' : ''}>
              <button
                type="button"
                class="piece"
                aria-expanded={open}
                onClick={() => onPlace({ section: run, index: open ? null : index })}
              >
                <span class="grow">{name}</span>
                <bdi>{figure}</bdi>
                <Icon name="down" size={16} />
              </button>
              {open && (
                <div class="piece-form">
                  <ElementForm element={element} pointer={`${pointer}/${index}`} texts={texts} />
                  <div class="actions">
                    <button
                      type="button"
                      class="press"
                      disabled={index === 0}
                      onClick={() => (
                        perform(moveElement(job.value, run, index, -1)),
                        onPlace({ section: run, index: index - 1 })
                      )}
                    >
                      {t.earlier}
                    </button>
                    <button
                      type="button"
                      class="press"
                      disabled={index === elements.length - 1}
                      onClick={() => (
                        perform(moveElement(job.value, run, index, 1)),
                        onPlace({ section: run, index: index + 1 })
                      )}
                    >
                      {t.later}
                    </button>
                    <button
                      type="button"
                      class="press"
                      onClick={() => (
                        perform(removeElement(job.value, run, index)),
                        onPlace({ section: run, index: null })
                      )}
                    >
                      {t.removePiece}
                    </button>
                    {isMain && index < elements.length - 1 && (
                      <button type="button" class="press" onClick={() => perform(splitMain(job.value, run, index))}>
                        {t.joinHere}
                      </button>
                    )}
                  </div>
                </div>
              )}
            </li>
          );
        })}
      </ol>
      <button type="button" class="tap" aria-expanded={adding.value} onClick={() => (adding.value = !adding.value)}>
        <Icon name="plus" size={18} /> {t.add}
      </button>
      {adding.value && (
        <div class="kinds">
          {KINDS.map(({ kind }) => (
            <button key={kind} type="button" class="press" onClick={() => add(kind)}>
              {kindName(kind, texts)}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}
