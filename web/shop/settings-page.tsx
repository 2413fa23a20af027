import { unitsOf, type Quantity } from '../../src/units/index.ts';
import { TopBar } from '../frame/top-bar.tsx';
import { Either } from '../forms/either.tsx';
import { changeSettings, settings } from '../state/settings.ts';
import { LANGUAGES, texts } from '../texts/index.ts';
import { unitFor } from '../words/say.ts';
import { CHOOSABLE } from './choosable-units.ts';

/** How this user reads: language, digits, light, and the unit of each quantity. Fields take any unit all the same. */
export function SettingsPage() {
  const t = texts.value.settings;
  const { language, digits, theme } = settings.value;
  return (
    <div class="narrow">
      <TopBar title={t.title} back={{ page: 'match' }} />
      <Either
        label={t.language}
        value={language}
        options={[
          { value: 'en' as const, text: LANGUAGES.en.name },
          { value: 'ur' as const, text: LANGUAGES.ur.name },
        ]}
        onChoose={(value) => changeSettings({ language: value })}
      />
      <Either
        label={t.digits}
        value={digits}
        options={[
          { value: 'western' as const, text: '0123' },
          { value: 'eastern' as const, text: '۰۱۲۳' },
        ]}
        onChoose={(value) => changeSettings({ digits: value })}
      />
      <Either
        label={t.theme}
        value={theme}
        options={[
          { value: 'system' as const, text: t.themes.system },
          { value: 'light' as const, text: t.themes.light },
          { value: 'dark' as const, text: t.themes.dark },
        ]}
        onChoose={(value) => changeSettings({ theme: value })}
      />
      <section class="part">
        <h2>{t.units}</h2>
        <p class="second">{t.unitsHelp}</p>
        <div class="fields">
          {(Object.keys(CHOOSABLE) as (keyof typeof CHOOSABLE)[]).map((quantity) => (
            <UnitChoice key={quantity} quantity={quantity} />
          ))}
        </div>
      </section>
    </div>
  );
}

function UnitChoice({ quantity }: { quantity: keyof typeof CHOOSABLE }) {
  const offered = unitsOf(quantity as Quantity).filter((unit) => CHOOSABLE[quantity].includes(unit.unit));
  return (
    <label class="field">
      <span class="label">{texts.value.settings.quantities[quantity]}</span>
      <select
        class="ltr"
        value={unitFor(quantity)}
        onChange={(event) =>
          changeSettings({ units: { ...settings.value.units, [quantity]: event.currentTarget.value } })
        }
      >
        {offered.map((unit) => (
          <option key={unit.unit} value={unit.unit}>
            {unit.unit}
          </option>
        ))}
      </select>
    </label>
  );
}
