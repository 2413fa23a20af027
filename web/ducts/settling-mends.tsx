import type { Mend, RunSpeed, Settling } from '../../src/assessment.ts';
import { DangerMark } from '../drawings/marks.tsx';
import { standGates } from '../edits/duct-gates.ts';
import { narrowRuns } from '../edits/narrow-runs.ts';
import { choosePlan, gatesNow, shownPlan, shownPlans } from '../match/chosen.ts';
import { capital, listed } from '../match/names.ts';
import type { Names } from '../match/names.ts';
import { planTitle, type PlanView } from '../match/plans.ts';
import { figure, saying } from '../match/say.ts';
import { advising } from '../state/assessment.ts';
import { job, perform } from '../state/job.ts';
import { texts as allTexts } from '../texts/index.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { DISCHARGE } from './layout.ts';

type Props = { settling: Settling | null | undefined; names: Names; texts: DuctTexts };

/** Where dust settles with the gates as they stand, and the least that would mend it, each with the speeds it brings; a tap tries it. */
export function SettlingMends({ settling, names, texts }: Props) {
  const t = texts.settling;
  const others = shownPlans.value.filter((plan) => plan !== shownPlan.value && slowestOf(plan) !== null);
  if (!settling && others.length === 0) return null;
  return (
    <section class="settling">
      {settling && (
        <>
          <h2>
            <DangerMark size={20} /> {t.title}
          </h2>
          <p>{speedsOf(settling.runs, names, texts)}</p>
          {settling.mends.length > 0 ? (
            <>
              <h3>{t.mendedBy}</h3>
              <ul class="mends">
                {settling.mends.map((mend) => (
                  <li key={mend.kind}>
                    <button type="button" class="mend" onClick={() => tryOut(mend)}>
                      <b>{whatToDo(mend, names, texts)}</b>
                      <span>{outcomeOf(mend, names, texts)}</span>
                    </button>
                  </li>
                ))}
              </ul>
            </>
          ) : (
            <p>{advising.value ? t.looking : t.hopeless}</p>
          )}
        </>
      )}
      {others.length > 0 && <OtherPlans plans={others} names={names} texts={texts} />}
    </section>
  );
}

/** The other ways the gates may stand in which dust settles; a tap turns everything to one. */
function OtherPlans({ plans, names, texts }: { plans: readonly PlanView[]; names: Names; texts: DuctTexts }) {
  return (
    <>
      <h2 class="also">{texts.settling.others}</h2>
      <ul class="slow-plans">
        {plans.map((plan) => (
          <li key={plan.name}>
            <button type="button" onClick={() => choosePlan(plan.name)}>
              <span>{planTitle(plan, names, allTexts.value.match)}</span>
              <bdi>{texts.settling.slowest(...slowWords(slowestOf(plan)!))}</bdi>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

const slowWords = ({ velocity_m_s, minimumVelocity_m_s }: RunSpeed): [string, string] => [
  figure('velocity', velocity_m_s),
  saying.quantity('velocity', minimumVelocity_m_s),
];

/** The run of a plan that lies furthest below its need; null where none does. */
function slowestOf({ loaded, clean }: PlanView): RunSpeed | null {
  const runs = [loaded, clean]
    .flatMap((one) => one?.sections ?? [])
    .flatMap((section): RunSpeed[] => {
      const { id, judged, ok, velocity_m_s, minimumVelocity_m_s } = section;
      return judged && !ok && velocity_m_s !== null && minimumVelocity_m_s !== null
        ? [{ id, velocity_m_s, minimumVelocity_m_s }]
        : [];
    });
  const share = (run: RunSpeed) => run.velocity_m_s / run.minimumVelocity_m_s;
  return runs.reduce<RunSpeed | null>((a, b) => (a && share(a) <= share(b) ? a : b), null);
}

function tryOut({ kind, gates, sizes }: Mend): void {
  if (kind === 'smaller-pipe') return perform(narrowRuns(job.value, sizes));
  const { name, open } = gatesNow.value;
  const turned = kind === 'open-gates' ? [...open, ...gates] : [...open].filter((id) => !gates.includes(id));
  const { plan, edited } = standGates(job.value, { name, open: [...open] }, turned);
  if (edited) perform(edited);
  choosePlan(plan);
}

const runName = (id: string, names: Names, texts: DuctTexts): string =>
  id === DISCHARGE ? texts.piece.wayOut : names.section(id);

const speedsOf = (runs: readonly RunSpeed[], names: Names, texts: DuctTexts): string =>
  runs
    .map((run) =>
      texts.settling.speed(
        runName(run.id, names, texts),
        figure('velocity', run.velocity_m_s),
        saying.quantity('velocity', run.minimumVelocity_m_s),
      ),
    )
    .map(capital)
    .join(' ');

function whatToDo({ kind, gates, sizes }: Mend, names: Names, texts: DuctTexts): string {
  const t = texts.settling;
  const match = allTexts.value.match;
  if (kind === 'open-gates') return t.open(listed(gates.map(names.machine), match));
  if (kind === 'shut-gates') return t.shut(listed(gates.map(names.machine), match));
  const built = [...new Set(sizes.map(({ id }) => id))].map((run) => {
    const own = sizes.filter(({ id }) => id === run);
    const was = own.map(({ from_m }) => saying.quantity('length', from_m));
    return t.size(runName(run, names, texts), own.map(({ size }) => size).join(' + '), was.join(' + '));
  });
  return capital(listed(built, match, 4));
}

function outcomeOf({ runs, short, loadFraction }: Mend, names: Names, texts: DuctTexts): string {
  const t = texts.settling;
  const speeds = runs.map(({ id, velocity_m_s }) =>
    t.becomes(runName(id, names, texts), saying.quantity('velocity', velocity_m_s)),
  );
  const shorts = short.map(({ id, flow_m3_s, requiredFlow_m3_s }) =>
    t.short(names.machine(id), figure('flow', flow_m3_s), saying.quantity('flow', requiredFlow_m3_s)),
  );
  const motor = (loadFraction ?? 0) > 1 ? [t.motor(saying.percent(loadFraction!))] : [];
  return [capital(listed(speeds, allTexts.value.match, 4)), ...shorts, ...motor].filter(Boolean).join('. ') + '.';
}
