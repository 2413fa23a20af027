import type { Reason } from '../assessment.ts';
import type { ReasonCode } from '../issues/reason-codes.ts';
import { formatNumber, formatQuantity } from '../units/format.ts';

/**
 * The sentences about a verdict, with the numbers they stand on; those about a motor and its mains stand in `motor/cautions.ts`. English; the page builds other languages
 * from code and values. Severity `stop` forbids, `caution` warns of danger or doubt, `note` explains.
 */

const flow = (q: number) => formatQuantity(q, 'm³/h');
const speed = (v: number) => formatQuantity(v, 'm/s');
const pressure = (p: number) => formatQuantity(p, 'Pa');
const percent = (f: number) => `${formatNumber(100 * f, 0)} %`;
const amps = (i: number) => formatQuantity(i, 'A');
const rpm = (n: number) => formatQuantity(n, 'rpm');
const odds = (p: number) =>
  p > 0.995 ? 'almost surely' : p < 0.005 ? 'almost never' : `${formatNumber(10 * p, 0)} times in 10`;

const ANSWERS: Record<string, string> = { yes: 'strong enough', no: 'not strong enough', unsure: 'not sure' };

type Sentence = { severity: Reason['severity']; text: (v: never) => string };

const SENTENCES = {
  'flow-short': {
    severity: 'stop',
    text: (v: { machine: string; flow_m3_s: number; required_m3_s: number; probability: number }) =>
      `The ${v.machine} gets ${flow(v.flow_m3_s)} and needs ${flow(v.required_m3_s)}; it gets enough ${odds(v.probability)}.`,
  },
  'velocity-low': {
    severity: 'stop',
    text: (v: { section: string; velocity_m_s: number; minimum_m_s: number; probability: number }) =>
      `In ${v.section} the air runs at ${speed(v.velocity_m_s)}; below ${speed(v.minimum_m_s)} the dust settles there. It is fast enough ${odds(v.probability)}.`,
  },
  'motor-overload': {
    severity: 'stop',
    text: (v: { load: number; limit: number; probability: number }) =>
      `The motor carries ${percent(v.load)} of its rating; ${percent(v.limit)} is allowed. It stays below ${odds(v.probability)}.`,
  },
  'readings-doubtful': {
    severity: 'caution',
    text: (v: { as_written: string; left_out: string }) =>
      `One of the readings looks wrong, and the answer hangs on it: as written ${ANSWERS[v.as_written]}, without it ${ANSWERS[v.left_out]}. Put it right before you decide.`,
  },
  'motor-overload-open': {
    severity: 'caution',
    text: (v: { load: number }) =>
      `Never run it with the pipe off: with nothing attached the motor carries ${percent(v.load)} of its rating.`,
  },
  'faster-than-tested': {
    severity: 'note',
    text: (v: {
      measured_A: number;
      then_rpm: number;
      now_rpm: number;
      cubed_A: number;
      current_A: number;
      plate_A: number;
    }) =>
      `In the test it drew ${amps(v.measured_A)} at ${rpm(v.then_rpm)}. By the cube of speed that makes ${amps(v.cubed_A)} at ${rpm(v.now_rpm)}; idle amps do not grow with the load, so about ${amps(v.current_A)} is likelier. Its plate allows ${amps(v.plate_A)}.`,
  },
  'low-voltage': {
    severity: 'stop',
    text: (v: { current_A: number; plate_A: number; voltage_V: number }) =>
      `At ${formatQuantity(v.voltage_V, 'V')} the motor draws ${amps(v.current_A)}; its plate allows ${amps(v.plate_A)}. Near or above that it runs hot though the air hardly changes.`,
  },
  'derated-overload': {
    severity: 'caution',
    text: (v: { load: number; share: number }) =>
      `The motor carries ${percent(v.load)} of its plate, but thin or hot air or uneven mains leave it ${percent(v.share)} here: it runs too hot.`,
  },
  'cable-drop': {
    severity: 'caution',
    text: (v: { lost_V: number; share: number; limit: number }) =>
      `The cable eats ${formatQuantity(v.lost_V, 'V')}, ${percent(v.share)} of the mains; ${percent(v.limit)} is usual at most. Have an electrician lay a thicker or shorter one.`,
  },
  'long-start': {
    severity: 'caution',
    text: (v: { start_s: number | null }) =>
      v.start_s === null
        ? 'At the lowest voltage the motor may not get this wheel up to speed at all: start it when the mains is up, gates closed.'
        : `Getting this wheel up to speed may take about ${formatNumber(v.start_s, 0)} s at the lowest voltage, an estimate good to a factor of two: the overload relay may trip. Start with the gates closed.`,
  },
  unstable: {
    severity: 'caution',
    text: () => 'The flow cannot rest anywhere in these ducts: the blower would surge and rumble.',
  },
  'several-points': {
    severity: 'caution',
    text: (v: { count: number; least_m3_s: number; most_m3_s: number }) =>
      `The curves cross ${v.count} times, between ${flow(v.least_m3_s)} and ${flow(v.most_m3_s)}: it may run at either. The least is judged for the air, the greatest power for the motor.`,
  },
  'tip-speed': {
    severity: 'stop',
    text: (v: { speed_m_s: number; low_m_s: number; high_m_s: number }) =>
      v.speed_m_s > v.high_m_s
        ? `The wheel's rim runs at ${speed(v.speed_m_s)}; above ${speed(v.high_m_s)} a wheel of this kind can burst. Do not run it at this speed.`
        : `The wheel's rim runs at ${speed(v.speed_m_s)}, inside the doubtful range of ${speed(v.low_m_s)} to ${speed(v.high_m_s)} for this kind. Have the wheel checked for cracks and balance, and stand aside at the first start.`,
  },
  'outside-evidence': {
    severity: 'caution',
    text: (v: { flow_m3_s: number | null }) =>
      v.flow_m3_s === null
        ? 'What is known of this blower does not reach to where it would run: add a chart, a reading with the ducts on, or the sizes of wheel and outlet.'
        : `Near ${flow(v.flow_m3_s)} nothing was measured or printed: the curve there is a guess from the kind of wheel. Take a reading there.`,
  },
  'power-unknown': {
    severity: 'caution',
    text: () =>
      'No shaft power was printed or measured: the motor load is a rough guess from the kind of wheel. Clamp the amps, or time the energy meter.',
  },
  'outlet-area-unknown': {
    severity: 'note',
    text: () => "The blower's outlet was not measured, so static and total pressure are told apart only roughly.",
  },
  'no-operating-point': {
    severity: 'stop',
    text: () => 'The blower finds no point to run at in these ducts: the curves do not cross.',
  },
  'filter-area-small': {
    severity: 'caution',
    text: (v: { load_m_s: number; limit_m_s: number }) =>
      `The filters pass ${formatNumber(3600 * v.load_m_s, 0)} m³/h on each m² of paper; common practice for wood dust is at most ${formatNumber(3600 * v.limit_m_s, 0)}. They will clog soon.`,
  },
  'returned-air': {
    severity: 'caution',
    text: () =>
      'The air goes back into the room: fine dust that passes the filters is breathed. Send it outdoors, or follow the local rules for returned air; keep the mask on.',
  },
  'drum-may-collapse': {
    severity: 'caution',
    text: (v: { suction_Pa: number }) =>
      `With the inlet blocked the drum and the filter box feel ${pressure(v.suction_Pa)} of suction. Thin drums cave in: fit stiff rings and a relief flap, and stand clear.`,
  },
  'sparks-with-dust': {
    severity: 'stop',
    text: () =>
      'Grinding sparks and wood or lint dust must never share a duct: they burn and explode. Build two separate systems, and ask the fire authority.',
  },
  'dust-through-wheel': {
    severity: 'caution',
    text: () =>
      'Dust and chips go through the wheel: they wear and unbalance it, and a nail strikes sparks. Put the drum before the blower.',
  },
  compressible: {
    severity: 'note',
    text: (v: { share: number }) =>
      `The pressure is ${percent(v.share)} of the air's own: the air thins on the way and the figures are a little high.`,
  },
  enough: {
    severity: 'note',
    text: (v: { machine: string; flow_m3_s: number; required_m3_s: number }) =>
      `The ${v.machine} gets ${flow(v.flow_m3_s)}; it needs ${flow(v.required_m3_s)}.`,
  },
} as const satisfies Partial<Record<ReasonCode, Sentence>>;

type Said = keyof typeof SENTENCES;
type Values<C extends Said> = Parameters<(typeof SENTENCES)[C]['text']>[0];

/** A reason with its sentence made from the numbers it stands on. */
export function reason<C extends Said>(
  code: C,
  subject: string,
  ...values: Values<C> extends undefined ? [] : [Values<C>]
): Reason {
  const { severity, text } = SENTENCES[code];
  const v = values[0] ?? {};
  return { code, severity, subject, text: (text as (v: unknown) => string)(v), values: v };
}
