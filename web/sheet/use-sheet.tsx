import { Icon } from '../drawings/icons.tsx';
import { texts } from '../texts/index.ts';
import { digits } from '../words/say.ts';
import type { ShownCell, ShownColumn } from './shown-sheet.ts';
import { takenRows } from './taken-sheet.ts';

type Props = {
  columns: readonly ShownColumn[];
  cells: readonly (readonly ShownCell[])[];
  /** figures and columns nobody has looked at */
  waiting: number;
  /** the flow cannot be used before the pipe's width is known */
  wantsPipe: boolean;
  onUse: () => void;
};

/** Puts the rows into the notebook, and says what is left out for now. */
export function UseSheet({ columns, cells, waiting, wantsPipe, onUse }: Props) {
  const t = texts.value.sheet;
  const rows = takenRows(columns, cells).filter((row) => row.length > 0).length;
  const left = [
    ...(wantsPipe ? [t.wantsPipe] : []),
    ...(waiting > 0 ? [texts.value.plate.useWithout(waiting, digits(String(waiting)))] : []),
  ];
  return (
    <button type="button" class="box fill next use" disabled={rows === 0 || wantsPipe} onClick={onUse}>
      <span>
        {t.use(rows, digits(String(rows)))}
        {left.length > 0 && <small>{left.join(' ')}</small>}
      </span>
      <Icon name="on" />
    </button>
  );
}
