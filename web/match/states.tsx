import type { StateResult } from '../../src/assessment.ts';
import type { Quantity } from '../../src/units/index.ts';
import { OpenMark, VerdictMark } from '../drawings/marks.tsx';
import type { MatchTexts } from '../texts/en-match.ts';
import { saying } from './say.ts';
import { stateVerdict } from './sentence.ts';

const QUANTITY: Record<string, Quantity> = {
  'm3/s': 'flow',
  Pa: 'pressure',
  'm/s': 'velocity',
  A: 'current',
  V: 'voltage',
  W: 'power',
};

const write = (value: number, unit: string): string => {
  const quantity = QUANTITY[unit];
  return quantity ? saying.quantity(quantity, value) : saying.percent(value);
};

/** Five questions, each asked at its own worst moment; one whose data are missing says what to type. */
export function States({ states, texts }: { states: readonly StateResult[]; texts: MatchTexts }) {
  const t = texts.states;
  return (
    <section class="states">
      <h2>{t.title}</h2>
      <ul>
        {states.map((state) => (
          <li key={state.state}>
            {state.ok === null ? <OpenMark /> : <VerdictMark verdict={stateVerdict(state)} />}
            <span class="grow">
              {t.names[state.state]}
              {state.ok === null && <small>{t.missing[state.state]}</small>}
              {state.ok !== null && state.limit !== null && (
                <small>{t.limits[state.state](write(state.limit, state.unit))}</small>
              )}
            </span>
            <b>
              <bdi>{state.value === null ? '–' : write(state.value, state.unit)}</bdi>
            </b>
          </li>
        ))}
      </ul>
    </section>
  );
}
