import { QuantityInput } from '../forms/quantity-input.tsx';
import { TextInput } from '../forms/text-input.tsx';
import { texts } from '../texts/index.ts';

/** The first machine and its run to the blower: the three pieces a blank job starts with. */
export function FirstMachine() {
  const t = texts.value.newJob;
  const section = '/ductwork/sections/0';
  return (
    <>
      <TextInput path={`${section}/pickup/machine`} label={t.machine} note="section" placeholder={t.machineExample} />
      <div class="fields">
        <QuantityInput
          path={`${section}/pickup/requiredFlow_m3_s`}
          quantity="flow"
          label={t.needs}
          note="section"
          help={t.needsHelp}
        />
        <QuantityInput
          path={`${section}/elements/1/length_m`}
          quantity="length"
          unit="m"
          label={t.hose}
          note="element"
          required
        />
        <QuantityInput
          path={`${section}/elements/2/length_m`}
          quantity="length"
          unit="m"
          label={t.pipe}
          note="element"
          required
        />
      </div>
      <p class="second">{t.thenDraw}</p>
    </>
  );
}
