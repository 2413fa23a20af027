import type { Reason } from '../../src/assessment.ts';
import { Icon } from '../drawings/icons.tsx';
import { TopBar } from '../frame/top-bar.tsx';
import { answered, issues } from '../state/assessment.ts';
import { job } from '../state/job.ts';
import { hashOf } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { digits } from '../words/say.ts';
import { Candidates } from './candidates.tsx';
import { chancePhrase } from './chance.ts';
import { Chooser } from './chooser.tsx';
import { choosePlan, shownBlower, shownPlan, shownPlans, wantedBlower } from './chosen.ts';
import { DANGERS, DangerStrip } from './danger.tsx';
import { FlowTables } from './flow-table.tsx';
import { namesIn } from './names.ts';
import type { Names } from './names.ts';
import { NextStep } from './next-step.tsx';
import { Pegs } from './pegs.tsx';
import { planMachines } from './plans.ts';
import { PlanRow } from './plan-row.tsx';
import { PlotView } from './plot-view.tsx';
import { saying } from './say.ts';
import { verdictSentence } from './sentence.ts';
import { States } from './states.tsx';
import { reasonText, whyLine } from './why.ts';
import './match.css';

/** The match: one sentence, the chance, why, what to do, then the picture and the figures behind it. */
export function MatchPlace({ wide }: { wide: boolean }) {
  const t = texts.value.match;
  const now = answered.value;
  return (
    <div class="match">
      {!wide && (
        <TopBar>
          <div class="grow">{now && now.job.blowers.length > 0 ? <BlowerChooser /> : <h1>{t.title}</h1>}</div>
        </TopBar>
      )}
      {now && now.job.blowers.length > 0 && job.value.blowers.length > 0 ? <Answer wide={wide} /> : <Nothing />}
    </div>
  );
}

export function BlowerChooser() {
  const t = texts.value.match;
  const options = job.value.blowers.map((blower) => ({ value: blower.id, text: blower.label ?? blower.id }));
  return (
    <Chooser
      label={t.choose.blower}
      value={shownBlower.value?.blowerId ?? ''}
      options={options}
      strong={false}
      onChoose={(id) => (wantedBlower.value = id)}
    />
  );
}

/** Before there is an answer: what is missing, and the way to it. */
function Nothing() {
  const t = texts.value.match.empty;
  if (job.value.blowers.length === 0) {
    return (
      <div class="nothing">
        <h1>{t.noBlower}</h1>
        <p>{t.noBlowerHint}</p>
        <a class="box fill next" href={hashOf({ page: 'new-blower' })}>
          {t.addBlower}
          <Icon name="on" />
        </a>
      </div>
    );
  }
  return <p class="nothing">{issues.value[0]?.message ?? t.working}</p>;
}

function Answer({ wide }: { wide: boolean }) {
  const all = texts.value;
  const t = all.match;
  const { job, assessment } = answered.value!;
  const blower = shownBlower.value;
  const plans = shownPlans.value;
  const plan = shownPlan.value;
  if (!blower || !plan) return <Nothing />;
  const names = namesIn(job, t);
  // what belongs to one plan is said of the plan that is looked at only
  const reasons = [...plan.worst.reasons, ...blower.reasons.filter((reason) => !OF_ONE_PLAN.includes(reason.code))];
  return (
    <>
      <h1 class="verdict">{verdictSentence(plans, blower, names, t)}</h1>
      {issues.value.length > 0 && <p class="second">{t.empty.amiss}</p>}
      <PlanRow plans={plans} chosen={plan} names={names} texts={t} verdictWords={all.verdict} onChoose={choosePlan} />
      <div class="odds">
        <Pegs probability={plan.probability} />
        <p>
          <b>{chancePhrase(plan.probability, t, digits)}</b> {t.chance.for(planMachines(plan, names, t))}
        </p>
      </div>
      <p class="why">{whyLine(plan, names, saying, t)}</p>
      <NextStep blower={blower} texts={t} />
      <PlotView plans={plans} chosen={plan} names={names} texts={t} />
      <Dangers reasons={reasons} at="motor" names={names} />
      <Dangers reasons={reasons} at="wheel" names={names} />
      {!wide && <Dangers reasons={reasons} at="ducts" names={names} />}
      <Candidates
        job={job}
        assessment={assessment}
        chosen={blower.blowerId}
        names={names}
        texts={t}
        onChoose={(id) => (wantedBlower.value = id)}
      />
      <States states={blower.states} texts={t} />
      <FlowTables plan={plan} plans={plans} names={names} texts={t} />
      <Notes reasons={reasons} names={names} />
    </>
  );
}

/** Reasons that differ from plan to plan. */
const OF_ONE_PLAN: readonly string[] = ['flow-short', 'velocity-low', 'motor-overload', 'enough'];

const once = (reasons: readonly Reason[]): Reason[] =>
  reasons.filter(
    (reason, i) => reasons.findIndex((other) => other.code === reason.code && other.subject === reason.subject) === i,
  );

function Dangers({
  reasons,
  at,
  names,
}: {
  reasons: readonly Reason[];
  at: 'motor' | 'ducts' | 'wheel';
  names: Names;
}) {
  const t = texts.value.match;
  return (
    <>
      {once(reasons)
        .filter((reason) => DANGERS[reason.code] === at)
        .map((reason) => (
          <DangerStrip key={reason.code + reason.subject}>{reasonText(reason, names, saying, t)}</DangerStrip>
        ))}
    </>
  );
}

/** Doubts and explanations that belong to no picture. */
function Notes({ reasons, names }: { reasons: readonly Reason[]; names: Names }) {
  const t = texts.value.match;
  const notes = once(reasons).filter(
    (reason) => !DANGERS[reason.code] && reason.severity !== 'stop' && reason.code !== 'enough',
  );
  if (notes.length === 0) return null;
  return (
    <section class="notes">
      <h2>{t.notes}</h2>
      <ul>
        {notes.map((reason) => (
          <li key={reason.code + reason.subject}>{reasonText(reason, names, saying, t)}</li>
        ))}
      </ul>
    </section>
  );
}
