import { Either } from '../forms/either.tsx';
import { texts } from '../texts/index.ts';
import type { MotorKind, PlateWork } from './plate-work.ts';

type Props = {
  motorKind: MotorKind;
  meaning: 'shaft' | 'input';
  change: (how: (before: PlateWork) => PlateWork) => void;
};

/** What a plate rarely says in words: the kind of motor, and which watts it means. */
export function KindRow({ motorKind, meaning, change }: Props) {
  const t = texts.value.blowers;
  return (
    <section class="part">
      <Either
        label={t.motorKind}
        value={motorKind}
        options={(['induction', 'universal', 'dc'] as const).map((value) => ({ value, text: t.motorKinds[value] }))}
        onChoose={(kind) => change((before) => ({ ...before, kind }))}
      />
      <Either
        label={t.wattsAre}
        value={meaning}
        options={[
          { value: 'shaft' as const, text: t.wattsShaft },
          { value: 'input' as const, text: t.wattsInput },
        ]}
        onChoose={(chosen) => change((before) => ({ ...before, meaning: chosen }))}
      />
    </section>
  );
}
