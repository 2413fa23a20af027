import { QuantityBox } from '../forms/quantity-box.tsx';
import { Crop } from '../plate/crop.tsx';
import type { Said } from '../plate/plate-work.ts';
import { endStep } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import type { HeadQuantity } from './sheet-reading.ts';
import type { ShownHead } from './shown-head.ts';

type Props = {
  head: readonly ShownHead[];
  photo: { photoId: string; width_px: number; height_px: number };
  turn_deg: number;
  onSay: (name: HeadQuantity, said: Said, merge: string | null) => void;
};

/** What the head of the sheet says of pipe, mains and air. */
export function HeadFields({ head, photo, turn_deg, onSay }: Props) {
  const t = texts.value;
  if (head.length === 0) return null;
  return (
    <section class="part">
      <h2>{t.sheet.head}</h2>
      {head.map(({ name, quantity, unit, text, read, isAsked }) => (
        <div key={name} class="figure">
          {read?.box_px && (
            <Crop
              photo={photo}
              box={read.box_px}
              turn_deg={turn_deg}
              alt={t.plate.cropAlt(t.sheet.heads[name], text)}
            />
          )}
          <div class="figure-field">
            <QuantityBox
              label={t.sheet.heads[name]}
              quantity={quantity}
              unit={unit}
              text={text}
              onText={(next) => onSay(name, { text: next }, name)}
              onLeave={endStep}
            />
          </div>
          {isAsked && (
            <button type="button" class="press fill" onClick={() => onSay(name, { seen: true }, null)}>
              {t.plate.confirm}
            </button>
          )}
        </div>
      ))}
    </section>
  );
}
