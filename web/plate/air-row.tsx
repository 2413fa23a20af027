import { texts } from '../texts/index.ts';
import type { AirMeaning } from './plate-work.ts';
import type { ShownFigure } from './shown-figures.ts';

type Props = {
  figures: readonly ShownFigure[];
  air: AirMeaning | undefined;
  onChoose: (air: AirMeaning) => void;
};

/**
 * A plate's flow and pressure: each the largest the blower can do, or both at once? Nobody but who reads the plate can say, so
 * nothing is chosen beforehand, and nothing goes over until it is.
 */
export function AirRow({ figures, air, onChoose }: Props) {
  const t = texts.value.plate.air;
  const has = (name: string): boolean => figures.some(({ form, value }) => form.name === name && value !== null);
  const [flow, pressure] = [has('flow_m3_s'), has('pressure_Pa')];
  if (!flow && !pressure) return null;
  const both = flow && pressure;
  const options: { value: AirMeaning; text: string; hint: string }[] = [
    {
      value: 'each-largest',
      text: both ? t.eachLargest : flow ? t.largestFlow : t.largestPressure,
      hint: both ? t.eachLargestHint : flow ? t.largestFlowHint : t.largestPressureHint,
    },
    ...(both ? [{ value: 'one-point' as const, text: t.onePoint, hint: t.onePointHint }] : []),
    { value: 'leave-out', text: t.leaveOut, hint: t.leaveOutHint },
  ];
  return (
    <section class="part">
      <h2>{both ? t.how : flow ? t.howFlow : t.howPressure}</h2>
      <div class="choices" role="radiogroup" aria-label={t.how}>
        {options.map(({ value, text, hint }) => (
          <button
            key={value}
            type="button"
            role="radio"
            class="choice"
            aria-checked={air === value}
            onClick={() => onChoose(value)}
          >
            <b>{text}</b>
            <small>{hint}</small>
          </button>
        ))}
      </div>
    </section>
  );
}
