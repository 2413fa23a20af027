import { useComputed, useSignal } from '@preact/signals';
import type { ReadingsEvidence } from '../../src/job/types.ts';
import type { CutPlan, CutStep, Cutting } from '../../src/readings/index.ts';
import { Either } from '../forms/either.tsx';
import { answered } from '../state/assessment.ts';
import { halfTyped } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { digits, isolated, say, sayIn, unitFor } from '../words/say.ts';
import { foreseenPlan } from './foreseen.ts';
import { isTaken, withPlannedRows } from './planned-rows.ts';

type Props = { blowerId: string; path: string; evidence: ReadingsEvidence; onPrint: (holes_m: number[]) => void };

/** Before the test: which holes to cut, or how far to throttle, in which order, and what the tube should show at each. */
export function BeforeTest({ blowerId, path, evidence, onPrint }: Props) {
  const t = texts.value.readings.plan;
  const cutting = useSignal<Cutting>('compass');
  const open = useSignal(evidence.rows.length < 3);
  const plan = useComputed(() => {
    const now = answered.value;
    return now && foreseenPlan(now.assessment, { blowerId, evidence, path, cutting: cutting.value });
  });
  const cap = evidence.rig.method === 'orifice-cap';
  const toCut = (plan.value?.steps ?? []).filter((step) => step.role !== 'closed' && step.role !== 'open');
  return (
    <details class="unfold before-test" open={open.value} onToggle={(e) => (open.value = e.currentTarget.open)}>
      <summary class="tap">{t.title}</summary>
      {plan.value === null ? (
        <p class="second">{t.waits}</p>
      ) : (
        <>
          <p>{intro(plan.value, cap)}</p>
          {cap && (
            <Either
              label={t.cutWith}
              value={cutting.value}
              options={[
                { value: 'compass' as const, text: t.compass },
                { value: 'hole-saw' as const, text: t.holeSaw },
              ]}
              onChoose={(how) => (cutting.value = how)}
            />
          )}
          <PlanTable steps={plan.value.steps} evidence={evidence} />
          <PlanNotes plan={plan.value} cap={cap} />
          {cap && (
            <div class="actions">
              <button
                type="button"
                class="press fill"
                disabled={plan.value.steps.every((step) => isTaken(step, evidence.rows))}
                onClick={() => {
                  halfTyped.value = withPlannedRows(halfTyped.value, `${path}/rows`, evidence.rows, plan.value!.steps);
                }}
              >
                {t.addRows}
              </button>
              <button
                type="button"
                class="press"
                onClick={() => onPrint(toCut.map((step) => step.row.orificeDiameter_m ?? 0))}
              >
                {t.print}
              </button>
            </div>
          )}
        </>
      )}
    </details>
  );
}

function intro({ fromShop, wanted_m3_s: [low, high] }: CutPlan, cap: boolean): string {
  const t = texts.value.readings.plan;
  const unit = unitFor('flow');
  const [from, to] = [sayIn('flow', low, unit), sayIn('flow', high, unit)];
  const range = isolated(from === to ? `${from} ${unit}` : `${from}–${to} ${unit}`);
  return `${fromShop ? t.shopRuns(range) : t.noShop} ${cap ? t.holesInOrder : t.throttleInOrder}`;
}

function PlanTable({ steps, evidence }: { steps: readonly CutStep[]; evidence: ReadingsEvidence }) {
  const t = texts.value.readings;
  const signal = SIGNALS.find(({ field }) => steps.some(({ row }) => row[field] != null));
  const holes = steps.some(({ row }) => row.orificeDiameter_m != null);
  const heads = [
    ...(holes ? [{ name: t.columns.orificeDiameter_m, unit: unitFor('length') }] : []),
    { name: t.plan.tubeShows, unit: unitFor('pressure') },
    ...(signal ? [{ name: t.columns[signal.field], unit: unitFor(signal.quantity) }] : []),
    { name: t.plan.air, unit: unitFor('flow') },
  ];
  return (
    <table class="plan-table">
      <thead>
        <tr>
          <th scope="col">{t.plan.order}</th>
          {heads.map(({ name, unit }) => (
            <th key={name} scope="col">
              {name} <bdi>{unit}</bdi>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {steps.map((step, i) => (
          <tr key={i} class={isTaken(step, evidence.rows) ? 'taken' : undefined}>
            <th scope="row">
              <b>{digits(String(i + 1))}</b> <span>{t.plan.roles[step.role]}</span>
            </th>
            {holes && <td>{holeWords(step)}</td>}
            <td>{sayIn('pressure', step.row.staticPressure_Pa)}</td>
            {signal && <td>{signal.say(step)}</td>}
            <td>{sayIn('flow', step.flow_m3_s)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const first = (values: readonly number[] | null | undefined): number | null => values?.[0] ?? null;

/** What a method shows beside the tap, and how it is said. */
const SIGNALS = [
  { field: 'throatPressure_Pa', quantity: 'pressure', say: (s: CutStep) => sayIn('pressure', s.row.throatPressure_Pa) },
  {
    field: 'differentialPressure_Pa',
    quantity: 'pressure',
    say: (s: CutStep) => sayIn('pressure', s.row.differentialPressure_Pa),
  },
  {
    field: 'velocityPressures_Pa',
    quantity: 'pressure',
    say: (s: CutStep) => sayIn('pressure', first(s.row.velocityPressures_Pa)),
  },
  {
    field: 'velocities_m_s',
    quantity: 'velocity',
    say: (s: CutStep) => sayIn('velocity', first(s.row.velocities_m_s)),
  },
  { field: 'fillTime_s', quantity: 'time', say: (s: CutStep) => sayIn('time', s.row.fillTime_s) },
] as const;

function holeWords({ role, row }: CutStep): string {
  const t = texts.value.readings.plan;
  if (role === 'closed') return t.noHole;
  return role === 'open' ? t.capOff : sayIn('length', row.orificeDiameter_m);
}

function PlanNotes({ plan, cap }: { plan: CutPlan; cap: boolean }) {
  const t = texts.value.readings.plan;
  const mm = (m: number): string => isolated(say('length', m, 'mm'));
  return (
    <ul class="notes second">
      <li>{t.tubeLegs(mm(plan.tubeLeg_m))}</li>
      {plan.steps.some((s) => s.smallSignal) && <li>{t.smallSignal}</li>}
      {plan.widerPipe_m !== null && <li class="strong">{t.widerPipe(mm(Math.ceil(plan.widerPipe_m * 200) / 200))}</li>}
      {cap && <li>{t.oneBoard}</li>}
      <li>{t.expected}</li>
    </ul>
  );
}
