import type { ReadingsEvidence } from '../../src/job/types.ts';
import { addedFlowDoubts } from '../../src/readings/index.ts';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { texts } from '../texts/index.ts';
import { isolated, say, sayNumber } from '../words/say.ts';
import { INSTRUMENTS, usualDoubts } from './usual-doubts.ts';

/** How far each instrument may be off: the usual stands in grey, and whoever knows better writes it over. */
export function InstrumentsPart({ path, evidence }: { path: string; evidence: ReadingsEvidence }) {
  const t = texts.value.readings.instruments;
  const usual = usualDoubts(evidence);
  const { rig } = evidence;
  const added = rig.uncertainty?.flowRelative == null ? addedFlowDoubts(rig) : [];
  return (
    <details class="unfold">
      <summary class="tap">{t.title}</summary>
      <p class="second">{t.hint}</p>
      <div class="fields">
        {INSTRUMENTS.map(({ field, quantity }) => (
          <QuantityInput
            key={field}
            path={`${path}/rig/uncertainty/${field}`}
            quantity={quantity}
            label={t[field]}
            note="rig"
            placeholder={field === 'flowRelative' ? percent(usual[field]) : say(quantity, usual[field])}
          />
        ))}
      </div>
      {added.length > 0 && (
        <ul class="notes second">
          {added.map(({ cause, sd }) => (
            <li key={cause}>{t.raisedBy(isolated(percent(sd)), t.causes[cause])}</li>
          ))}
        </ul>
      )}
    </details>
  );
}

const percent = (share: number): string => `${sayNumber(100 * share, 1)} %`;
