import type { Case } from '../../src/assessment.ts';
import { VerdictMark } from '../drawings/marks.tsx';
import type { MatchTexts } from '../texts/en-match.ts';
import { say, unitFor } from '../words/say.ts';
import type { Names } from './names.ts';
import { planTitle } from './plans.ts';
import type { PlanView } from './plans.ts';
import { figure } from './say.ts';

type Props = { plan: PlanView; plans: readonly PlanView[]; names: Names; texts: MatchTexts };

/** Flow and speed at every machine and in every pipe for the chosen plan, and all plans against all machines. */
export function FlowTables({ plan, plans, names, texts }: Props) {
  const one = plan.loaded ?? plan.clean;
  if (!one) return null;
  return (
    <>
      <section class="figures">
        <h2>
          {texts.table.title} <small>{planTitle(plan, names, texts)}</small>
        </h2>
        <Everywhere plan={plan} one={one} names={names} texts={texts} />
      </section>
      {plans.length > 1 && (
        <section class="figures">
          <h2>{texts.table.plans}</h2>
          <PlansByMachine plans={plans} names={names} texts={texts} />
        </section>
      )}
    </>
  );
}

function Everywhere({ plan, one, names, texts }: { plan: PlanView; one: Case; names: Names; texts: MatchTexts }) {
  const t = texts.table;
  const other = one === plan.loaded ? plan.clean : null;
  const pickups = new Map(one.pickups.map((pickup) => [pickup.id, pickup]));
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{t.machine}</th>
          <th scope="col">
            {t.flow} <small>{unitFor('flow')}</small>
          </th>
          <th scope="col">
            {t.speed} <small>{unitFor('velocity')}</small>
          </th>
        </tr>
      </thead>
      <tbody>
        {one.sections.map((section) => {
          const pickup = pickups.get(section.id);
          const clean = other?.sections.find((same) => same.id === section.id);
          if (pickup && !pickup.open) {
            return (
              <tr key={section.id} class="shut">
                <th scope="row">{names.machine(section.id)}</th>
                <td colSpan={2}>{t.shut}</td>
              </tr>
            );
          }
          const short = pickup && !pickup.ok;
          const settles = section.judged && !section.ok;
          return (
            <tr key={section.id}>
              <th scope="row">
                {pickup ? names.machine(section.id) : names.section(section.id)}
                {(short || settles) && <small class="amiss-here">{short ? t.short : t.settles}</small>}
              </th>
              <td>
                <b>{figure('flow', section.flow_m3_s)}</b>
                {pickup?.requiredFlow_m3_s != null && (
                  <small>
                    {t.needs} {figure('flow', pickup.requiredFlow_m3_s)}
                  </small>
                )}
                {pickup?.requiredFlow_m3_s == null && clean && (
                  <small>
                    {figure('flow', clean.flow_m3_s)} {t.clean}
                  </small>
                )}
              </td>
              <td>
                <b>{section.velocity_m_s === null ? '–' : figure('velocity', section.velocity_m_s)}</b>
                {section.judged && section.minimumVelocity_m_s !== null && (
                  <small>
                    {t.needs} {figure('velocity', section.minimumVelocity_m_s)}
                  </small>
                )}
              </td>
            </tr>
          );
        })}
        <tr>
          <th scope="row">{t.wayOut}</th>
          <td>
            <b>{figure('flow', one.operatingPoint?.flow_m3_s)}</b>
          </td>
          <td>
            <b>{figure('velocity', one.discharge.velocity_m_s) || '–'}</b>
          </td>
        </tr>
      </tbody>
    </table>
  );
}

/** Rows are ways the gates may stand, columns the machines: what each gets, filters full. */
function PlansByMachine({ plans, names, texts }: { plans: readonly PlanView[]; names: Names; texts: MatchTexts }) {
  const machines = plans[0]!.worst.pickups.map((pickup) => pickup.id);
  return (
    <div class="scroll-x" tabIndex={0} role="group" aria-label={texts.table.plans}>
      <table class="matrix">
        <thead>
          <tr>
            <th scope="col">
              <small>{unitFor('flow')}</small>
            </th>
            {machines.map((id) => (
              <th key={id} scope="col">
                {names.machine(id)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plans.map((plan) => (
            <tr key={plan.name}>
              <th scope="row">
                <span class="with-mark">
                  <VerdictMark verdict={plan.verdict} size={18} /> {planTitle(plan, names, texts)}
                </span>
              </th>
              {plan.worst.pickups.map((pickup) => (
                <td
                  key={pickup.id}
                  class={pickup.open ? (pickup.ok ? '' : 'short') : 'shut'}
                  title={
                    pickup.open && pickup.requiredFlow_m3_s !== null
                      ? `${texts.table.needs} ${say('flow', pickup.requiredFlow_m3_s)}`
                      : undefined
                  }
                >
                  {pickup.open ? figure('flow', pickup.flow_m3_s) : '·'}
                  {pickup.open && !pickup.ok && <small>{texts.table.short}</small>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
