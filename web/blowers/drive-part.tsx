import type { Blower } from '../../src/job/types.ts';
import { Caution } from '../cautions/caution.tsx';
import { setDriveKind } from '../edits/set-drive-kind.ts';
import { Either } from '../forms/either.tsx';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { job, perform } from '../state/job.ts';
import { texts } from '../texts/index.ts';

/** How the motor turns the wheel. */
export function DrivePart({ blower, path }: { blower: Blower; path: string }) {
  const t = texts.value.blowers;
  const belt = blower.drive.kind === 'belt';
  return (
    <section class="part">
      <h2>{t.drive}</h2>
      <Either
        label={t.drive}
        showLabel={false}
        value={blower.drive.kind}
        options={[
          { value: 'belt' as const, text: t.drives.belt },
          { value: 'direct' as const, text: t.drives.direct },
        ]}
        onChoose={(kind) => perform(setDriveKind(job.value, { blowerId: blower.id, kind }))}
      />
      <div class="fields">
        {belt && (
          <>
            <QuantityInput
              path={`${path}/drive/motorPulleyDiameter_m`}
              quantity="length"
              label={t.motorPulley}
              note="drive"
            />
            <QuantityInput
              path={`${path}/drive/wheelPulleyDiameter_m`}
              quantity="length"
              label={t.wheelPulley}
              note="drive"
            />
          </>
        )}
        <QuantityInput
          path={`${path}/runSpeed_rpm`}
          quantity="speed"
          label={t.runSpeed}
          note="drive"
          help={t.runSpeedHelp}
        />
      </div>
      {belt && <Caution name="belt" />}
    </section>
  );
}
