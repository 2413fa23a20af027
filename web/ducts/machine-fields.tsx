import type { Section } from '../../src/job/types.ts';
import { setGate } from '../edits/duct-gates.ts';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { TextInput } from '../forms/text-input.tsx';
import { saying } from '../match/say.ts';
import { edit, job, perform } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { MATERIAL_ORDER } from '../shop/materials.ts';
import { texts as allTexts } from '../texts/index.ts';
import { ChoiceInput, FlagInput } from './choice-input.tsx';
import { machineKind } from './layout/machine-kinds.ts';
import { USUAL_FLOWS, usualMiddle_m3_s } from './usual-machines.ts';

/** The machine at the end of a branch: what it is, the air it needs, its gate. */
export function MachineFields({ section, pointer, texts }: { section: Section; pointer: string; texts: DuctTexts }) {
  const t = texts.piece;
  const pickup = section.pickup!;
  const usual = USUAL_FLOWS[machineKind(pickup.machine ?? '').kind];
  const flowPath = `${pointer}/pickup/requiredFlow_m3_s`;
  return (
    <div class="machine-fields">
      <div class="fields">
        <TextInput path={`${pointer}/pickup/machine`} label={t.name} note="section" />
        <QuantityInput
          path={flowPath}
          quantity="flow"
          label={t.needs}
          note="section"
          help={usual && t.usual(saying.range('flow', usual.low_m3_s, usual.high_m3_s))}
        />
      </div>
      {usual && (
        <p class="second">
          {t.usualFrom[usual.basis]} {t.usualPort(saying.range('length', ...usual.port_m))}
        </p>
      )}
      {usual && pickup.requiredFlow_m3_s == null && (
        <button
          type="button"
          class="press"
          onClick={() => edit('section', (before) => withValueAt(before, flowPath, usualMiddle_m3_s(usual)))}
        >
          {t.useUsual(saying.quantity('flow', usualMiddle_m3_s(usual)))}
        </button>
      )}
      <div class="fields">
        <FlagInput
          label={t.hasGate}
          value={Boolean(section.gate)}
          onChange={(has) => perform(setGate(job.value, section.id, has))}
        />
      </div>
      <details class="more-fields">
        <summary>{t.more}</summary>
        <div class="fields">
          <ChoiceInput
            path={`${pointer}/pickup/material`}
            label={t.makes}
            note="section"
            unsaid={t.asTheShop}
            options={MATERIAL_ORDER.map((value) => ({ value, text: allTexts.value.shop.materials[value] }))}
          />
          <QuantityInput
            path={`${pointer}/pickup/minimumVelocity_m_s`}
            quantity="velocity"
            label={t.slowest}
            note="section"
            help={t.slowestHint}
          />
          {section.gate && (
            <QuantityInput path={`${pointer}/gate/closedLeakArea_m2`} quantity="area" label={t.leak} note="gate" />
          )}
        </div>
      </details>
    </div>
  );
}
