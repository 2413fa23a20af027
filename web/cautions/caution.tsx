import { DangerMark } from '../drawings/marks.tsx';
import { settings } from '../state/settings.ts';
import { texts } from '../texts/index.ts';
import { CAUTIONS, type CautionName } from '../cautions.ts';

/** A caution where the danger is: the short sentence always, the rest and its source on a tap. Yellow, triangle and words. */
export function Caution({ name, inset = true }: { name: CautionName; inset?: boolean }) {
  const caution = CAUTIONS[name];
  const { short, long } = caution[settings.value.language];
  return (
    <details class={inset ? 'hazard haz inset' : 'hazard haz'}>
      <summary>
        <DangerMark size={22} />
        <b>{short}</b>
      </summary>
      <p>{long}</p>
      <p>{texts.value.cautions.localCodes}</p>
      <p class="hazard-source">
        {texts.value.cautions.source}: <bdi lang="en">{caution.source}</bdi>
      </p>
    </details>
  );
}
