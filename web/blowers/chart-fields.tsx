import type { ChartEvidence } from '../../src/job/types.ts';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { PressureKindChoice } from './rated-point-fields.tsx';

/** What a chart says beside its curve, and the way back to its photo. */
export function ChartFields({ path, evidence, blowerId }: { path: string; evidence: ChartEvidence; blowerId: string }) {
  const t = texts.value.blowers;
  const { photoId } = evidence;
  return (
    <div class="open-row">
      <div class="fields">
        <QuantityInput
          path={`${path}/speed_rpm`}
          quantity="speed"
          label={t.speed}
          note="evidence"
          help={t.chartSpeedHelp}
        />
        <QuantityInput
          path={`${path}/airDensity_kg_m3`}
          quantity="density"
          label={t.airWeight}
          note="evidence"
          placeholder="1.2 kg/m³"
          help={t.airWeightHelp}
        />
      </div>
      <PressureKindChoice path={path} value={evidence.pressureKind} />
      {photoId && (
        <button type="button" class="tap" onClick={() => go({ page: 'photo', blowerId, photoId })}>
          {t.seePhoto}
        </button>
      )}
    </div>
  );
}
