import type { ReadingsEvidence } from '../../src/job/types.ts';
import type { Quantity } from '../../src/units/index.ts';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { Crop } from '../plate/crop.tsx';
import type { Said } from '../plate/plate-work.ts';
import { endStep } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { isolated, say } from '../words/say.ts';
import type { HeadQuantity } from './sheet-reading.ts';
import type { ShownHead } from './shown-head.ts';

type Props = {
  head: readonly ShownHead[];
  notebook: ReadingsEvidence;
  photo: { photoId: string; width_px: number; height_px: number };
  turn_deg: number;
  onSay: (name: HeadQuantity, said: Said, merge: string | null) => void;
};

/** What the head of the sheet says of pipe, mains and air. */
export function HeadFields({ head, notebook, photo, turn_deg, onSay }: Props) {
  const t = texts.value;
  if (head.length === 0) return null;
  return (
    <section class="part">
      <h2>{t.sheet.head}</h2>
      {head.map(({ name, quantity, unit, text, value, read, isAsked }) => (
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
          <Stays known={knownIn(notebook, name)} value={value} quantity={quantity} unit={unit} />
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

/** What the notebook says already. */
function knownIn({ rig, air }: ReadingsEvidence, name: HeadQuantity): number | null {
  if (name === 'ductDiameter_m') return rig.pipeDiameter_m ?? null;
  if (name === 'airTemperature_C') return air?.temperature_C ?? null;
  return name === 'barometer_Pa' ? (air?.barometricPressure_Pa ?? null) : null;
}

/** The notebook knows better than a sheet added to it: said where both differ. */
function Stays({
  known,
  value,
  quantity,
  unit,
}: {
  known: number | null;
  value: number | null;
  quantity: Quantity;
  unit: string;
}) {
  if (known === null || value === null || Math.abs(known - value) <= 1e-3 * Math.abs(known)) return null;
  return <p class="second">{texts.value.sheet.stays(isolated(say(quantity, known, unit)))}</p>;
}
