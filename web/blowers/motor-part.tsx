import type { Blower } from '../../src/job/types.ts';
import { Caution } from '../cautions/caution.tsx';
import { Either } from '../forms/either.tsx';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { KeptPhotos } from '../photo/kept-photos.tsx';
import { edit } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { MotorExtras } from './motor-extras.tsx';

/** The motor as its plate says, field by field in the plate's own order. */
export function MotorPart({ blower, path }: { blower: Blower; path: string }) {
  const t = texts.value.blowers;
  const set = (field: string, value: unknown): void =>
    edit('motor', (before) => withValueAt(before, `${path}/motor/${field}`, value));
  const kind = blower.motor.kind ?? 'induction';
  return (
    <section class="part">
      <h2>{t.motorPlate}</h2>
      <p class="second">{t.motorPlateHint}</p>
      <KeptPhotos
        photoIds={blower.platePhotoIds ?? []}
        nameOf={texts.value.plate.see}
        take={texts.value.plate.photograph}
        onOpen={(photoId) => go({ page: 'plate', blowerId: blower.id, photoId })}
      />
      <div class="fields">
        <QuantityInput path={`${path}/motor/ratedPower_W`} quantity="power" label={t.power} note="motor" required />
        <QuantityInput path={`${path}/motor/speed_rpm`} quantity="speed" label={t.plateSpeed} note="motor" />
        <QuantityInput path={`${path}/motor/voltage_V`} quantity="voltage" label={t.voltage} note="motor" />
        <QuantityInput path={`${path}/motor/current_A`} quantity="current" label={t.current} note="motor" />
        <QuantityInput
          path={`${path}/motor/powerFactor`}
          quantity="fraction"
          unit="1"
          label={t.powerFactor}
          note="motor"
          placeholder="0.85"
        />
        <QuantityInput
          path={`${path}/motor/efficiency`}
          quantity="fraction"
          unit="%"
          label={t.efficiency}
          note="motor"
        />
        <QuantityInput
          path={`${path}/motor/serviceFactor`}
          quantity="fraction"
          unit="1"
          label={t.serviceFactor}
          note="motor"
          placeholder="1.0"
        />
        <QuantityInput
          path={`${path}/motor/frequency_Hz`}
          quantity="frequency"
          label={t.frequency}
          note="motor"
          placeholder="50 Hz"
        />
      </div>
      <Either
        label={t.phases}
        value={blower.motor.phases}
        options={[
          { value: 1 as const, text: texts.value.shop.onePhase },
          { value: 3 as const, text: texts.value.shop.threePhase },
        ]}
        onChoose={(value) => set('phases', value)}
      />
      <Either
        label={t.motorKind}
        value={kind}
        options={[
          { value: 'induction' as const, text: t.motorKinds.induction },
          { value: 'universal' as const, text: t.motorKinds.universal },
          { value: 'dc' as const, text: t.motorKinds.dc },
        ]}
        onChoose={(value) => set('kind', value)}
      />
      {kind !== 'induction' && (
        <Either
          label={t.wattsAre}
          value={blower.motor.ratedPowerMeaning ?? 'shaft'}
          options={[
            { value: 'shaft' as const, text: t.wattsShaft },
            { value: 'input' as const, text: t.wattsInput },
          ]}
          onChoose={(value) => set('ratedPowerMeaning', value)}
        />
      )}
      <MotorExtras blower={blower} path={path} />
      <Caution name="mains" />
    </section>
  );
}
