import type { PlateReading } from '../../src/plate/reading.ts';
import { texts } from '../texts/index.ts';
import { Crop } from './crop.tsx';
import { LEFT_ON_PLATE, type LeftOnPlate as Name } from './plate-fields.ts';

type Props = {
  reading: PlateReading | null;
  photo: { photoId: string; width_px: number; height_px: number };
  turn_deg: number;
};

/** What else was read and no sum needs: shown, and kept with the photo. */
export function LeftOnPlate({ reading, photo, turn_deg }: Props) {
  const t = texts.value.plate;
  const found = (Object.keys(LEFT_ON_PLATE) as Name[]).flatMap((name) => {
    const field = reading?.fields[name];
    return field ? [{ name, field }] : [];
  });
  if (found.length === 0) return null;
  return (
    <details class="unfold part">
      <summary>
        <span class="tap">{t.alsoRead(found.length)}</span>
      </summary>
      <p class="second">{t.alsoReadHint}</p>
      <dl class="left-on-plate">
        {found.map(({ name, field }) => (
          <div key={name}>
            <dt>{t.names[name]}</dt>
            <dd>
              <bdi class={field.needsReview ? 'doubtful' : undefined}>{field.asPrinted || String(field.value)}</bdi>
              <Crop
                photo={photo}
                box={field.box_px}
                turn_deg={turn_deg}
                alt={t.cropAlt(t.names[name], field.asPrinted)}
              />
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
