import { Icon } from '../drawings/icons.tsx';
import { texts } from '../texts/index.ts';
import { sayNumber } from '../words/say.ts';
import { isReady, type ShownFigure } from './shown-figures.ts';
import type { AirMeaning } from './plate-work.ts';

type Props = { figures: readonly ShownFigure[]; air: AirMeaning | undefined; onUse: () => void };

/** Puts the plate into the job, and says what is left out for now. */
export function UseButton({ figures, air, onUse }: Props) {
  const t = texts.value.plate;
  const ready = figures.filter(isReady).length;
  const waiting = figures.filter(({ standing }) => standing === 'doubted').length;
  const isAirOpen =
    !air && figures.some(({ form: { name }, value }) => /^(flow|pressure)/.test(name) && value !== null);
  const left = [
    ...(waiting > 0 ? [t.useWithout(waiting, sayNumber(waiting))] : []),
    ...(isAirOpen ? [t.useWithoutAir] : []),
  ];
  return (
    <button type="button" class="box fill next use" disabled={ready === 0} onClick={onUse}>
      <span>
        {t.use}
        {left.length > 0 && <small>{left.join(' ')}</small>}
      </span>
      <Icon name="on" />
    </button>
  );
}
