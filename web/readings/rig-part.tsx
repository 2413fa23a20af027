import { useSignal } from '@preact/signals';
import type { ReadingsEvidence } from '../../src/job/types.ts';
import { Either } from '../forms/either.tsx';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { edit } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';
import { METHODS, RIG_FIELDS } from './rig-fields.ts';
import { RigPicture } from './rig-picture.tsx';
import { InstrumentsPart } from './instruments-part.tsx';
import { TapChoice } from './tap-choice.tsx';
import { TraversePart } from './traverse-part.tsx';

const TAPPINGS = ['corner', 'flange', 'D-and-half-D'] as const;

/** The test pipe as it stands: a drawing with its sizes, the fields it needs, and the rest folded away. */
export function RigPart({ path, evidence }: { path: string; evidence: ReadingsEvidence }) {
  const t = texts.value.readings;
  const choosing = useSignal(false);
  const { rig } = evidence;
  const set = (field: string, value: unknown): void =>
    edit('rig', (before) => withValueAt(before, `${path}/rig/${field}`, value));
  const { first, more } = RIG_FIELDS[rig.method];
  return (
    <section>
      <RigPicture rig={rig} />
      {rig.method === 'orifice-cap' && rig.side !== 'outlet' && (
        <TapChoice tap={rig.tap ?? null} onChoose={(tap) => set('tap', tap)} />
      )}
      <div class="fields">
        {first.map((field) => (
          <QuantityInput
            key={field.name}
            path={`${path}/rig/${field.name}`}
            quantity={field.quantity}
            unit={field.unit}
            label={t.rig[field.name]}
            note="rig"
            placeholder={field.placeholder}
          />
        ))}
      </div>
      {rig.method === 'orifice-in-pipe' && (
        <Either
          label={t.tappings}
          value={rig.tappings ?? 'corner'}
          options={TAPPINGS.map((value) => ({ value, text: t.tappingNames[value] }))}
          onChoose={(tappings) => set('tappings', tappings)}
        />
      )}
      {(rig.method === 'pitot-traverse' || rig.method === 'vane-traverse') && <TraversePart rig={rig} />}
      <details class="unfold">
        <summary class="tap">{t.moreAboutRig}</summary>
        <button
          type="button"
          class="tap"
          aria-expanded={choosing.value}
          onClick={() => (choosing.value = !choosing.value)}
        >
          {t.otherMethod}
        </button>
        {choosing.value && (
          <div class="tiles words" role="radiogroup" aria-label={t.method}>
            {METHODS.map((method) => (
              <button
                key={method}
                type="button"
                role="radio"
                class="tile"
                aria-checked={method === rig.method}
                onClick={() => set('method', method)}
              >
                {t.methods[method]}
              </button>
            ))}
          </div>
        )}
        <Either
          label={t.side}
          value={rig.side ?? 'inlet'}
          options={[
            { value: 'inlet' as const, text: t.inlet },
            { value: 'outlet' as const, text: t.outlet },
          ]}
          onChoose={(side) => set('side', side)}
        />
        <Either
          label={t.sameDrive}
          value={rig.sameDrive ?? true}
          options={[
            { value: true, text: t.ownMotor },
            { value: false, text: t.otherMotor },
          ]}
          onChoose={(same) => set('sameDrive', same)}
        />
        <div class="fields">
          {more.map((field) => (
            <QuantityInput
              key={field.name}
              path={`${path}/rig/${field.name}`}
              quantity={field.quantity}
              unit={field.unit}
              label={t.rig[field.name]}
              note="rig"
              placeholder={field.placeholder}
            />
          ))}
          <QuantityInput path={`${path}/air/temperature_C`} quantity="temperature" label={t.airThere} note="rig" />
          <QuantityInput
            path={`${path}/air/barometricPressure_Pa`}
            quantity="pressure"
            unit="hPa"
            label={t.barometerThere}
            note="rig"
          />
        </div>
      </details>
      <InstrumentsPart path={path} evidence={evidence} />
    </section>
  );
}
