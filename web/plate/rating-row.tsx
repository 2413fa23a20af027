import { texts } from '../texts/index.ts';
import { isolated } from '../words/say.ts';
import { figureText } from './figure-text.ts';
import { FIGURES } from './plate-fields.ts';
import type { RatingChoice } from './ratings.ts';

type Props = { choices: readonly RatingChoice[]; chosen: number; onChoose: (index: number) => void };

/** A plate with several ratings: the one the motor will run on here. What suits the mains is chosen until somebody says otherwise. */
export function RatingRow({ choices, chosen, onChoose }: Props) {
  const t = texts.value.plate;
  if (choices.length < 2) return null;
  return (
    <section class="part">
      <h2>{t.whichRating}</h2>
      <p class="second">{t.whichRatingHint}</p>
      <div class="choices" role="radiogroup" aria-label={t.whichRating}>
        {choices.map((choice, index) => (
          <button
            key={index}
            type="button"
            role="radio"
            class="choice"
            aria-checked={index === chosen}
            onClick={() => onChoose(index)}
          >
            <b>
              <bdi>{figuresOf(choice, choices).join(' · ')}</bdi>
            </b>
            {choice.joint && <small>{t.joints[choice.joint]}</small>}
          </button>
        ))}
      </div>
    </section>
  );
}

/** What tells this rating from the others; its volts and amps always. */
function figuresOf({ values }: RatingChoice, all: readonly RatingChoice[]): string[] {
  return FIGURES.flatMap(({ name, quantity, unit }) => {
    const value = values[name];
    const isTold = name === 'voltage_V' || name === 'current_A' || new Set(all.map((c) => c.values[name])).size > 1;
    if (value === undefined || !isTold) return [];
    return [isolated(figureText(value, '', quantity, unit ?? UNITS_SAID[name] ?? '1'))];
  });
}

/** The units of a plate, whatever this user reads elsewhere: they are compared with its print. */
const UNITS_SAID: Partial<Record<string, string>> = {
  ratedPower_W: 'kW',
  voltage_V: 'V',
  current_A: 'A',
  speed_rpm: 'rpm',
  frequency_Hz: 'Hz',
};
