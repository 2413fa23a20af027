import type { WordReader } from '../words/word-reader.ts';
import { readCells } from './cells/read-cells.ts';
import { respelt, settleHabits } from './cells/settle-habits.ts';
import { exchanged } from './columns/exchanged.ts';
import { guessColumns } from './columns/guess-columns.ts';
import { asPossible } from './columns/possible-size.ts';
import { repeated } from './columns/repeated.ts';
import { withUnit } from './columns/unit-by-size.ts';
import { weighColumn } from './columns/weigh-column.ts';
import { mayBeOf } from './columns/what-it-may-be.ts';
import type { DigitReader } from './digits/digit-network.ts';
import type { FoundTable } from './find-table.ts';
import { nameColumns } from './heads/name-columns.ts';
import { readHead } from './heads/read-head.ts';
import { putTogether } from './put-together.ts';
import type { SheetReading } from './reading.ts';

/** Reads a table that was found: its cells and the sheet's head, then what its columns are. @param words reads crops of text */
export async function readTable(
  found: FoundTable,
  digits: DigitReader,
  words: WordReader,
  onMeaning: () => void,
): Promise<SheetReading> {
  const { ink } = found;
  const heard = await readCells(found.table, ink, digits, words);
  const settled = settleHabits(heard, ink.field, digits);
  const cells = respelt(heard, ink.field, digits, settled);
  const fields = await readHead(found.table, found.lines, ink, digits, words, settled);
  onMeaning();
  const spellings = found.columns.map((_, c) => cells.map((row) => row[c]!.spellings));
  const mayBe = spellings.map(mayBeOf);
  const names = nameColumns(found.headings, (quantity, c) => mayBe[c]!(quantity));
  const columns = names.map(({ quantity }, c) =>
    repeated(
      weighColumn(spellings[c]!, quantity === 'opening'),
      cells.map((row) => row[c]!.content),
    ),
  );
  const named = guessColumns(
    names.map((column, c) => asPossible(withUnit(column, columns[c]!), columns[c]!)),
    columns,
  );
  return putTogether({ ...found, columns: exchanged(named, columns) }, fields, cells, columns);
}
