import { useSignal } from '@preact/signals';
import type { Blower } from '../../src/job/types.ts';
import { Caution } from '../cautions/caution.tsx';
import { BladePicture } from '../drawings/blades.tsx';
import { setFamily } from '../edits/set-family.ts';
import { CountInput } from '../forms/count-input.tsx';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { job, perform } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { FamilyTiles } from './family-tiles.tsx';
import { Rotation } from './rotation.tsx';

/** The wheel: its blades by picture, its sizes by tape, and which way it must turn. */
export function WheelPart({ blower, path }: { blower: Blower; path: string }) {
  const choosing = useSignal(false);
  const t = texts.value.blowers;
  const { family } = blower.wheel;
  return (
    <section class="part">
      <h2>{t.wheel}</h2>
      {choosing.value ? (
        <FamilyTiles
          chosen={family}
          onChoose={(chosen) => {
            perform(setFamily(job.value, { blowerId: blower.id, family: chosen }));
            choosing.value = false;
          }}
        />
      ) : (
        <div class="row">
          <BladePicture family={family} />
          <span class="grow">
            <b>{t.families[family]}</b>
            <span class="second block">{t.lookFor[family]}</span>
          </span>
          <button type="button" class="tap" onClick={() => (choosing.value = true)}>
            {texts.value.common.change}
          </button>
        </div>
      )}
      <div class="fields">
        <QuantityInput
          path={`${path}/wheel/diameter_m`}
          quantity="length"
          label={t.diameter}
          note="wheel"
          help={t.diameterHelp}
        />
        <QuantityInput path={`${path}/wheel/width_m`} quantity="length" label={t.width} note="wheel" />
        <QuantityInput path={`${path}/wheel/inletDiameter_m`} quantity="length" label={t.inlet} note="wheel" />
        <QuantityInput
          path={`${path}/wheel/mass_kg`}
          quantity="mass"
          label={t.wheelMass}
          note="wheel"
          help={t.wheelMassHelp}
        />
        <CountInput path={`${path}/wheel/bladeCount`} label={t.blades} note="wheel" />
        <QuantityInput
          path={`${path}/wheel/safeTipSpeed_m_s`}
          quantity="velocity"
          label={t.safeTip}
          note="wheel"
          help={t.safeTipHelp}
        />
      </div>
      <Rotation family={family} />
      <Caution name="burstingWheel" />
    </section>
  );
}
