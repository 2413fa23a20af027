import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Case, RunSpeed, Settling } from '../../src/assessment.ts';
import type { Element } from '../../src/duct/index.ts';
import { RunCautions } from '../cautions/run-cautions.tsx';
import { TopBar, UndoButtons } from '../frame/top-bar.tsx';
import { JobMenu } from '../frame/job-menu.tsx';
import { toggleGate } from '../edits/duct-gates.ts';
import { Chooser } from '../match/chooser.tsx';
import {
  choosePlan,
  hasFilterStates,
  gatesNow,
  shownBlower,
  shownCase,
  shownPlan,
  shownPlans,
  wantedBlower,
  wantedFilters,
} from '../match/chosen.ts';
import { DANGERS, DangerStrip } from '../match/danger.tsx';
import { namesIn } from '../match/names.ts';
import { planTitle } from '../match/plans.ts';
import { saying } from '../match/say.ts';
import { useWidth } from '../match/use-width.ts';
import { reasonText } from '../match/why.ts';
import { job, perform } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { say } from '../words/say.ts';
import { AddMachine } from './add-machine.tsx';
import { Budget } from './budget.tsx';
import { Drawing } from './drawing.tsx';
import type { Touch } from './drawing.tsx';
import { drawingWords } from './drawing-words.ts';
import { fitted } from './fitted.ts';
import type { Place } from './layout.ts';
import { DISCHARGE } from './layout/sheet.ts';
import { RunEditor } from './run-editor.tsx';
import { SettlingMends } from './settling-mends.tsx';
import './ducts.css';

/** The ducts: the drawing is the editor. A tapped piece opens below it, the figures follow at once. */
export function DuctsPlace({ wide }: { wide: boolean }) {
  const all = texts.value;
  const t = all.ducts;
  const now = job.value;
  const names = namesIn(now, all.match);
  const place = useSignal<Place | null>(null);
  const [box, width] = useWidth<HTMLDivElement>(wide ? 840 : 390);
  const { sheet, metrics, shrink } = useMemo(
    () => fitted(now.ductwork, names, width, wide),
    [now.ductwork, all, width, wide],
  );
  const blower = now.blowers.find((one) => one.id === shownBlower.value?.blowerId) ?? now.blowers[0];
  const shown = shownCase.value;
  const plan = shownPlan.value;
  const onTouch = (touch: Touch) => {
    if (touch.piece === 'blower') {
      go(blower ? { page: 'blower', blowerId: blower.id } : { page: 'new-blower' });
    } else if (touch.piece === 'gate') {
      if (!plan) return;
      const { plan: next, edited } = toggleGate(
        now,
        { name: gatesNow.value.name, open: [...gatesNow.value.open] },
        touch.section,
      );
      if (edited) perform(edited);
      choosePlan(next);
    } else {
      place.value = touch.place;
    }
  };
  const moving = useStirred();
  const words = drawingWords(sheet, now, shown, metrics, names, t);
  const lastMachine = now.ductwork.sections.findLast((section) => section.pickup)?.id ?? null;
  const dangers = (shown ? [...(shownBlower.value?.reasons ?? []), ...shown.reasons] : []).filter(
    (reason, i, list) =>
      DANGERS[reason.code] === 'ducts' && list.findIndex((other) => other.code === reason.code) === i,
  );
  return (
    <div class={`ducts-place ${wide ? 'wide' : ''} ${moving ? '' : 'still'}`}>
      {wide ? (
        <div class="top choosers">
          <Choosers />
          <UndoButtons />
          <JobMenu />
        </div>
      ) : (
        <TopBar>
          <div class="grow choosers">
            {shownPlans.value.length > 0 && <h1 class="unseen">{t.title}</h1>}
            <PlanChooser />
          </div>
        </TopBar>
      )}
      <div class="drawing-box" ref={box}>
        <div class="drawing-scroll">
          <Drawing
            sheet={sheet}
            metrics={metrics}
            shrink={shrink}
            ductwork={now.ductwork}
            shown={shown}
            open={gatesNow.value.open}
            labels={words.labels}
            chosen={place.value}
            blower={{ family: blower?.wheel.family ?? 'unknown', bladeCount: blower?.wheel.bladeCount ?? null }}
            texts={words.texts}
            onTouch={onTouch}
          />
        </div>
        {sheet.width * shrink > width + 4 && <p class="onward second">{t.drawing.onward}</p>}
      </div>
      {sheet.unplaced.length > 0 && <p class="second">{t.drawing.unplaced(sheet.unplaced.join(', '))}</p>}
      {place.value ? (
        <Opened onPlace={(next) => (place.value = next)} place={place.value} names={names} />
      ) : (
        <>
          <div class="under-drawing">
            <AddMachine
              copyOf={lastMachine}
              names={names}
              texts={t}
              label={t.piece.addMachine}
              onPlace={(next) => (place.value = next)}
            />
            {!wide && <FiltersChooser />}
          </div>
          <p class="second">{t.drawing.hint}</p>
        </>
      )}
      {shown && <SettlingMends settling={settlingOf(shown)} names={names} texts={t} />}
      {dangers.map((reason) => (
        <DangerStrip key={reason.code}>{reasonText(reason, names, saying, all.match)}</DangerStrip>
      ))}
      {shown && plan && (
        <Budget
          parts={shown.budget}
          caption={t.budget.of(
            say('pressure', shown.operatingPoint?.totalPressure_Pa),
            planTitle(plan, names, all.match),
            hasFilterStates.value ? `${t.filterStates[shown.filterState]} ${t.filters.toLocaleLowerCase()}` : '',
          )}
          texts={t}
        />
      )}
    </div>
  );
}

/** Where dust settles in a case, before the advice is there without what would mend it. */
function settlingOf({ settling, sections }: Case): Settling | null {
  if (settling !== undefined) return settling;
  const runs = sections.filter(({ judged, ok, velocity_m_s }) => judged && !ok && velocity_m_s !== null) as RunSpeed[];
  return runs.length > 0 ? { runs, mends: [], text: '' } : null;
}

/** How long the dashes creep on after the last touch [ms]: movement nobody watches costs battery. */
const STIRRED_MS = 10_000;

/** True for a while after each touch or key, and for a while after the page has come up. */
function useStirred(): boolean {
  const stirred = useSignal(true);
  useEffect(() => {
    let timer = setTimeout(() => (stirred.value = false), STIRRED_MS);
    const stir = () => {
      stirred.value = true;
      clearTimeout(timer);
      timer = setTimeout(() => (stirred.value = false), STIRRED_MS);
    };
    const events = ['pointerdown', 'keydown', 'wheel'] as const;
    for (const event of events) addEventListener(event, stir, { passive: true });
    return () => {
      clearTimeout(timer);
      for (const event of events) removeEventListener(event, stir);
    };
  }, []);
  return stirred.value;
}

/** The open piece, scrolled into sight when another one is tapped. */
function Opened({
  place,
  names,
  onPlace,
}: {
  place: Place;
  names: ReturnType<typeof namesIn>;
  onPlace: (place: Place | null) => void;
}) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const rect = box.current?.getBoundingClientRect();
    if (rect && rect.top > innerHeight - 220) box.current?.scrollIntoView({ block: 'center' });
  }, [place.section]);
  return (
    <div ref={box}>
      <RunEditor place={place} shown={shownCase.value} names={names} texts={texts.value.ducts} onPlace={onPlace} />
      <RunCautions elements={elementsOf(place)} />
    </div>
  );
}

const elementsOf = ({ section }: Place): readonly Element[] => {
  const { sections, discharge } = job.value.ductwork;
  return (section === DISCHARGE ? discharge : sections.find((one) => one.id === section)?.elements) ?? [];
};

function Choosers() {
  const t = texts.value.ducts;
  return (
    <>
      <PlanChooser />
      <FiltersChooser />
      {job.value.blowers.length > 0 && (
        <span class="with-label">
          <span class="second">{t.blower}</span>
          <Chooser
            label={t.blower}
            value={shownBlower.value?.blowerId ?? ''}
            options={job.value.blowers.map((one) => ({ value: one.id, text: one.label ?? one.id }))}
            onChoose={(id) => (wantedBlower.value = id)}
          />
        </span>
      )}
    </>
  );
}

function PlanChooser() {
  const { ducts: t, match } = texts.value;
  const plans = shownPlans.value;
  if (plans.length === 0) return <h1>{t.title}</h1>;
  const names = namesIn(job.value, match);
  return (
    <span class="with-label">
      <span class="second">{t.gatesFor}</span>
      <Chooser
        label={t.gatesFor}
        value={shownPlan.value?.name ?? ''}
        options={plans.map((plan) => ({ value: plan.name, text: planTitle(plan, names, match) }))}
        onChoose={choosePlan}
      />
    </span>
  );
}

function FiltersChooser() {
  const t = texts.value.ducts;
  if (!hasFilterStates.value) return null;
  return (
    <span class="with-label">
      <span class="second">{t.filters}</span>
      <Chooser
        label={t.filters}
        value={wantedFilters.value}
        options={(['clean', 'loaded'] as const).map((state) => ({ value: state, text: t.filterStates[state] }))}
        onChoose={(state) => (wantedFilters.value = state)}
      />
    </span>
  );
}
