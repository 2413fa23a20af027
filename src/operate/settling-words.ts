import type { Mend, RunSpeed } from '../assessment.ts';
import type { Ductwork } from '../job/types.ts';
import { formatNumber, formatQuantity } from '../units/format.ts';
import { DISCHARGE } from './stand.ts';

const speed = (v: number) => formatQuantity(v, 'm/s');
const flow = (q: number) => formatQuantity(q, 'm³/h');
const width = (d: number) => formatQuantity(d, 'mm');

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

function nameOf({ sections }: Ductwork, id: string): string {
  if (id === DISCHARGE) return 'the run behind the blower';
  const section = sections.find((one) => one.id === id);
  return section?.label ?? (section?.pickup ? `the ${section.pickup.machine ?? id} branch` : id);
}

const machineOf = ({ sections }: Ductwork, id: string): string =>
  `the ${sections.find((one) => one.id === id)?.pickup?.machine ?? id}`;

const speeds = (ductwork: Ductwork, runs: readonly RunSpeed[]): string =>
  listed(runs.map(({ id, velocity_m_s }) => `${speed(velocity_m_s)} in ${nameOf(ductwork, id)}`));

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Where dust settles, with the speeds there and the speed that is needed; and where nothing mends it, that. */
export function settlingSentence(ductwork: Ductwork, runs: readonly RunSpeed[], mended: boolean): string {
  const needs = [...new Set(runs.map(({ minimumVelocity_m_s }) => speed(minimumVelocity_m_s)))];
  const hopeless = mended ? '' : ' Neither gates nor a smaller pipe mend that: it takes a stronger blower.';
  return `Dust settles: ${speeds(ductwork, runs)}, ${listed(needs)} needed.${hopeless}`;
}

function whatToDo(ductwork: Ductwork, { kind, gates, sizes }: Pick<Mend, 'kind' | 'gates' | 'sizes'>): string {
  if (kind === 'smaller-pipe') {
    const runs = [...new Set(sizes.map(({ id }) => id))].map((run) => {
      const own = sizes.filter(({ id }) => id === run);
      const to = own.map(({ size, to_m }) => `${size} (${width(to_m)} inside)`);
      return `${nameOf(ductwork, run)} in ${listed(to)} instead of ${listed(own.map(({ from_m }) => width(from_m)))}`;
    });
    return `Build ${listed(runs)}`;
  }
  const machines = listed(gates.map((id) => machineOf(ductwork, id)));
  return kind === 'open-gates' ? `Open also ${machines}` : `Shut ${machines}`;
}

/** What to do, and what then happens: the speeds, who then has too little, and the motor where it would be overloaded. */
export function mendSentence(ductwork: Ductwork, mend: Omit<Mend, 'text'>): string {
  const then = mend.runs.length > 0 ? `: ${speeds(ductwork, mend.runs)}` : '';
  const short = mend.short.map(
    ({ id, flow_m3_s, requiredFlow_m3_s }) =>
      ` ${capital(machineOf(ductwork, id))} then gets ${flow(flow_m3_s)} and needs ${flow(requiredFlow_m3_s)}.`,
  );
  const load = mend.loadFraction ?? 0;
  const motor = load > 1 ? ` The motor would carry ${formatNumber(100 * load, 0)} % of its rating.` : '';
  return `${whatToDo(ductwork, mend)}${then}.${short.join('')}${motor}`;
}
