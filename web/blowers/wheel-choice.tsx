import { useId } from 'preact/hooks';
import type { Family } from '../../src/fan/families.ts';
import { FAMILIES } from '../drawings/blade-paths.ts';
import { Icon } from '../drawings/icons.tsx';
import { addBlower } from '../edits/add-blower.ts';
import { Either } from '../forms/either.tsx';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { readQuantity, withUnitNamed } from '../forms/quantity-text.ts';
import { halfTyped, job, perform, setHalfTyped } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { unitFor } from '../words/say.ts';
import { FamilyTiles } from './family-tiles.tsx';

/** Where the choices of a blower that is not yet one are kept, so that a reload finds them again. */
const DRAFT = { family: '/new-blower/family', power: '/new-blower/power', drive: '/new-blower/drive' };

/** The least that makes a blower: what its wheel looks like, what its plate says it can do, belt or not. */
export function WheelChoice({ onChosen }: { onChosen: (blowerId: string) => void }) {
  const why = useId();
  const t = texts.value.blowers;
  const family = FAMILIES.find((name) => name === halfTyped.value[DRAFT.family]) ?? null;
  const drive: 'belt' | 'direct' = halfTyped.value[DRAFT.drive] === 'belt' ? 'belt' : 'direct';
  const powerText = halfTyped.value[DRAFT.power] ?? '';
  const power = readQuantity(powerText, 'power', unitFor('power'));
  const missing = family === null ? t.chooseWheelFirst : !power.ok ? t.typePowerFirst : null;
  const add = (chosen: Family): void => {
    if (!power.ok) return;
    const powerAsTyped = withUnitNamed(powerText, 'power', unitFor('power'));
    const edited = addBlower(job.value, { family: chosen, ratedPower_W: power.si, driveKind: drive, powerAsTyped });
    perform(edited);
    for (const key of Object.values(DRAFT)) setHalfTyped(key, null);
    onChosen(edited.blowerId);
  };
  return (
    <>
      <p>{t.whichWheel}</p>
      <FamilyTiles chosen={family} onChoose={(chosen) => setHalfTyped(DRAFT.family, chosen)} />
      <div class="fields">
        <QuantityBox
          label={t.power}
          quantity="power"
          unit={unitFor('power')}
          text={powerText}
          onText={(text) => setHalfTyped(DRAFT.power, text)}
          help={t.powerHelp}
        />
        <Either
          label={t.drive}
          value={drive}
          options={[
            { value: 'direct' as const, text: t.drives.direct },
            { value: 'belt' as const, text: t.drives.belt },
          ]}
          onChoose={(value) => setHalfTyped(DRAFT.drive, value)}
        />
      </div>
      <button
        type="button"
        class="box fill next"
        disabled={missing !== null}
        aria-describedby={missing ? why : undefined}
        onClick={() => family && add(family)}
      >
        {t.addThis} <Icon name="on" />
      </button>
      {missing && (
        <p id={why} class="second">
          {missing}
        </p>
      )}
    </>
  );
}
