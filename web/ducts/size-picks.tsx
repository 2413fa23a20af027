import { useSignal } from '@preact/signals';
import type { Job } from '../../src/job/types.ts';
import type { Case } from '../../src/assessment.ts';
import { elementsOf, mainDiameter_m } from '../edits/duct-run.ts';
import { setRunDiameter } from '../edits/duct-size.ts';
import { Either } from '../forms/either.tsx';
import { saying } from '../match/say.ts';
import { perform } from '../state/job.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { familiesFor, familyOf, isSize } from '../../src/pipe/index.ts';
import { say } from '../words/say.ts';
import { flowInRun, speedAt, STILL_M_S } from './airflow.ts';
import { isHose } from './layout/cut-route.ts';

type Props = { job: Job; run: string; shown: Case | null; needed_m_s: number | null; texts: DuctTexts };

/** Sizes as they are sold, the inside that counts, and how fast the air of now would run in each. A tap changes the run at once. */
export function SizePicks({ job, run, shown, needed_m_s, texts }: Props) {
  const elements = elementsOf(job, run);
  const pipes = elements.filter((element) => element.kind === 'pipe');
  const pipe = pipes.find((one) => !isHose(one)) ?? pipes[0];
  const wanted = useSignal<string | null>(null);
  const now_m = pipe?.diameter_m ?? mainDiameter_m(elements);
  if (now_m === null) return null;
  const families = familiesFor(pipe?.surface);
  const { family, sizes } = families.find((one) => one.family === wanted.value) ?? familyOf(pipe?.surface, now_m);
  const flow = flowInRun(shown, run);
  return (
    <div class="size-picks">
      <p class="label">
        {texts.piece.size} <span class="second">({texts.piece.sizeHint})</span>
      </p>
      {families.length > 1 && (
        <Either
          label={texts.piece.soldAs}
          value={family}
          options={families.map((one) => ({ value: one.family, text: texts.piece.sizes[one.family]! }))}
          onChoose={(next) => (wanted.value = next)}
        />
      )}
      <div class="sizes" role="radiogroup" aria-label={texts.piece.size}>
        {sizes.map((size) => {
          const chosen = isSize(size, now_m);
          const speed = speedAt(flow, size.inside_m) > STILL_M_S ? speedAt(flow, size.inside_m) : null;
          const slow = speed !== null && needed_m_s !== null && speed < needed_m_s;
          return (
            <button
              key={size.name}
              type="button"
              role="radio"
              aria-checked={chosen}
              class={slow && chosen ? 'size haz' : 'size'}
              onClick={() => perform(setRunDiameter(job, run, now_m, size.inside_m))}
            >
              <b>{size.name}</b>
              <span>
                <bdi>{say('length', size.inside_m)}</bdi>
              </span>
              {speed !== null && <i class={slow ? 'slow' : ''}>{saying.quantity('velocity', Math.round(speed))}</i>}
            </button>
          );
        })}
      </div>
    </div>
  );
}
