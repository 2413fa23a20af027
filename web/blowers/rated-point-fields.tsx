import type { RatedPointEvidence } from '../../src/job/types.ts';
import { Either } from '../forms/either.tsx';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { edit } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';

/** One point as plates and adverts give it. A plate's largest flow and largest pressure are two points, never one. */
export function RatedPointFields({ path, evidence }: { path: string; evidence: RatedPointEvidence }) {
  const t = texts.value.blowers;
  return (
    <div class="open-row">
      <p class="second">{t.pointCaution}</p>
      <div class="fields">
        <QuantityInput
          path={`${path}/flow_m3_s`}
          quantity="flow"
          label={t.flow}
          note="evidence"
          required
          help={t.zeroIsShut}
        />
        <QuantityInput
          path={`${path}/pressure_Pa`}
          quantity="pressure"
          label={t.pressure}
          note="evidence"
          required
          help={t.zeroIsFree}
        />
        <QuantityInput path={`${path}/speed_rpm`} quantity="speed" label={t.speed} note="evidence" />
        <QuantityInput
          path={`${path}/airDensity_kg_m3`}
          quantity="density"
          label={t.airWeight}
          note="evidence"
          placeholder="1.2 kg/m³"
        />
      </div>
      <PressureKindChoice path={path} value={evidence.pressureKind} />
    </div>
  );
}

export function PressureKindChoice({ path, value }: { path: string; value: 'static' | 'total' | null | undefined }) {
  const t = texts.value.blowers;
  return (
    <Either
      label={t.pressureKind}
      value={value}
      options={[
        { value: 'static' as const, text: t.static },
        { value: 'total' as const, text: t.total },
      ]}
      onChoose={(kind) => edit('evidence', (before) => withValueAt(before, `${path}/pressureKind`, kind))}
    />
  );
}
