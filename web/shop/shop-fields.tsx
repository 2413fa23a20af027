import type { Job } from '../../src/job/types.ts';
import { Either } from '../forms/either.tsx';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { Caution } from '../cautions/caution.tsx';
import { edit, job } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { answered } from '../state/assessment.ts';
import { texts } from '../texts/index.ts';
import { say } from '../words/say.ts';
import { MATERIAL_ORDER, SPARKS_OR_DUST } from './materials.ts';

export function AirFields() {
  const t = texts.value.shop;
  const air = answered.value?.assessment.air;
  return (
    <>
      <div class="fields">
        <QuantityInput
          path="/site/altitude_m"
          quantity="length"
          unit="m"
          label={t.altitude}
          note="site"
          placeholder="0 m"
        />
        <QuantityInput
          path="/site/airTemperature_C"
          quantity="temperature"
          label={t.temperature}
          note="site"
          placeholder="20 °C"
        />
        <QuantityInput
          path="/site/relativeHumidity"
          quantity="fraction"
          unit="%"
          label={t.humidity}
          note="site"
          placeholder="50 %"
        />
        <QuantityInput
          path="/site/barometricPressure_Pa"
          quantity="pressure"
          unit="hPa"
          label={t.barometer}
          note="site"
          help={t.barometerHelp}
        />
      </div>
      {air && <p class="second">{t.airThen(say('density', air.density_kg_m3))}</p>}
    </>
  );
}

export function SupplyFields() {
  const t = texts.value.shop;
  const phases = job.value.supply.phases;
  return (
    <>
      <Either
        label={t.phases}
        value={phases}
        options={[
          { value: 1 as const, text: t.onePhase },
          { value: 3 as const, text: t.threePhase },
        ]}
        onChoose={(value) => edit('supply', (before) => withValueAt(before, '/supply/phases', value))}
      />
      <div class="fields">
        <QuantityInput path="/supply/voltage_V" quantity="voltage" label={t.voltage} note="supply" />
        <QuantityInput
          path="/supply/lowestVoltage_V"
          quantity="voltage"
          label={t.lowest}
          note="supply"
          help={t.lowestHelp}
        />
        <QuantityInput
          path="/supply/frequency_Hz"
          quantity="frequency"
          label={t.frequency}
          note="supply"
          placeholder="50 Hz"
        />
      </div>
    </>
  );
}

export function MaterialField() {
  const t = texts.value.shop;
  const now = job.value.material;
  return (
    <>
      <div class="tiles words" role="radiogroup" aria-label={t.carries}>
        {MATERIAL_ORDER.map((material) => (
          <button
            key={material}
            type="button"
            role="radio"
            class="tile"
            aria-checked={material === now}
            onClick={() => edit('material', (before): Job => ({ ...before, material }))}
          >
            {t.materials[material]}
          </button>
        ))}
      </div>
      {SPARKS_OR_DUST[now].map((name) => (
        <Caution key={name} name={name} />
      ))}
    </>
  );
}

export function ExhaustField() {
  const t = texts.value.shop;
  const exhaust = job.value.ductwork.exhaust ?? 'outdoors';
  return (
    <>
      <Either
        label={t.exhaust}
        value={exhaust}
        options={[
          { value: 'outdoors' as const, text: t.outdoors },
          { value: 'returned' as const, text: t.returned },
        ]}
        onChoose={(value) => edit('discharge', (before) => withValueAt(before, '/ductwork/exhaust', value))}
      />
      {exhaust === 'returned' && <Caution name="returnedAir" />}
    </>
  );
}

export function RequirementFields() {
  const t = texts.value.shop;
  return (
    <div class="fields">
      <QuantityInput
        path="/requirement/confidence"
        quantity="fraction"
        unit="%"
        label={t.confidence}
        note="requirement"
        placeholder="95 %"
        help={t.confidenceHelp}
      />
      <QuantityInput
        path="/requirement/motorReserve"
        quantity="fraction"
        unit="%"
        label={t.reserve}
        note="requirement"
        placeholder="10 %"
        help={t.reserveHelp}
      />
      <QuantityInput
        path="/dustRate_kg_h"
        quantity="mass-flow"
        label={t.dustRate}
        note="requirement"
        help={t.dustRateHelp}
      />
    </div>
  );
}
