import type { Blower } from '../../src/job/types.ts';
import { Either } from '../forms/either.tsx';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { edit, job } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';
import { ThreeVoltages } from './three-voltages.tsx';

/** What only some know of a motor: how it starts and is fed, its cable, its past. Folded away until somebody asks. */
export function MotorExtras({ blower, path }: { blower: Blower; path: string }) {
  const t = texts.value.blowers;
  const { motor } = blower;
  const set = (field: string, value: unknown): void =>
    edit('motor', (before) => withValueAt(before, `${path}/${field}`, value));
  const induction = (motor.kind ?? 'induction') === 'induction';
  const { phases } = job.value.supply;
  return (
    <>
      {induction && motor.phases === 3 && phases === 1 && (
        <Either
          label={t.fedThrough}
          value={motor.fedThrough ?? 'capacitor'}
          options={(['capacitor', 'inverter'] as const).map((value) => ({ value, text: t.feeds[value] }))}
          onChoose={(value) => set('motor/fedThrough', value)}
        />
      )}
      <details class="unfold">
        <summary>
          <span class="tap">{t.moreMotor}</span>
        </summary>
        <div class="fields">
          <QuantityInput
            path={`${path}/cable/length_m`}
            quantity="length"
            unit="m"
            label={t.cableLength}
            note="motor"
            help={t.cableLengthHelp}
          />
          <QuantityInput
            path={`${path}/cable/crossSection_m2`}
            quantity="area"
            unit="mm²"
            label={t.cableSize}
            note="motor"
            help={t.cableSizeHelp}
          />
          {induction && (
            <QuantityInput
              path={`${path}/motor/idleCurrent_A`}
              quantity="current"
              label={t.idleAmps}
              note="motor"
              help={t.idleAmpsHelp}
            />
          )}
          {induction && phases !== 1 && (
            <QuantityInput
              path="/supply/voltageUnbalance"
              quantity="fraction"
              unit="%"
              label={t.unbalance}
              note="supply"
              help={t.unbalanceHelp}
            />
          )}
        </div>
        {induction && phases !== 1 && <ThreeVoltages />}
        <Either
          label={t.cableMetal}
          value={blower.cable?.metal ?? 'copper'}
          options={[
            { value: 'copper' as const, text: t.copper },
            { value: 'aluminium' as const, text: t.aluminium },
          ]}
          onChoose={(value) => set('cable/metal', value)}
        />
        <Either
          label={t.rewound}
          value={motor.rewound ?? false}
          options={[
            { value: false, text: t.rewoundNo },
            { value: true, text: t.rewoundYes },
          ]}
          onChoose={(value) => set('motor/rewound', value)}
        />
        {induction && motor.phases === 1 && (
          <Either
            label={t.startsBy}
            value={motor.startsBy}
            options={(['start-capacitor', 'run-capacitor', 'split-phase', 'shaded-pole'] as const).map((value) => ({
              value,
              text: t.starts[value],
            }))}
            onChoose={(value) => set('motor/startsBy', value)}
          />
        )}
      </details>
    </>
  );
}
