import type { Family } from '../../src/fan/families.ts';
import { FAMILIES } from '../drawings/blade-paths.ts';
import { BladePicture } from '../drawings/blades.tsx';
import { texts } from '../texts/index.ts';

/** Wheels to tap: which one looks like yours? */
export function FamilyTiles({ chosen, onChoose }: { chosen: Family | null; onChoose: (family: Family) => void }) {
  const t = texts.value.blowers;
  return (
    <div class="tiles wheels" role="radiogroup" aria-label={t.whichWheel}>
      {FAMILIES.map((family) => (
        <button
          key={family}
          type="button"
          role="radio"
          class="tile"
          aria-checked={family === chosen}
          onClick={() => onChoose(family)}
        >
          <BladePicture family={family} size={72} />
          <span>{t.families[family]}</span>
          <small>{t.lookFor[family]}</small>
        </button>
      ))}
    </div>
  );
}
