import { unitCalled } from '../../units/names.ts';
import type { Quantity } from '../../units/quantities.ts';
import type { Unit } from '../../units/units.ts';
import { COLUMN_QUANTITIES, type ColumnQuantity } from '../quantities.ts';
import { nameAmong, passagesOf } from './alike.ts';
import { COLUMN_NAMES } from './names.ts';
import { unitsAtEnd, type Parted } from './unit-at-end.ts';
import { unitAsRead } from './units-as-read.ts';

/** What a column holds. `sureness` 0..1 that both quantity and unit are right. */
export type NamedColumn = {
  readonly quantity: ColumnQuantity | null;
  readonly unit: Unit | null;
  readonly sureness: number;
};

/** What is left of a flow's unit without its 3. */
const VOLUMES: Readonly<Record<string, string>> = {
  rpm: 'm³/min',
  'm/s': 'm³/s',
  'm/min': 'm³/min',
  'm/h': 'm³/h',
  'ft/min': 'CFM',
};

type Guess = { quantity: ColumnQuantity; unit: Unit | null; worth: number };

/** The unit is worth as much as a good name; one of another kind rules the name out. */
const UNIT_WORTH = 0.5;
const NO_UNIT_WORTH = 0.12;
const CLEAR_NAME = 0.7;
const CLEAR_UNIT = 0.9;
/** How much of the worth goes where two units are equally likely: the column is then no sure one. */
const UNIT_DOUBT = 4;
/** Of these there is one column only: the unit says as much as half a name. Of two pressures suction is hardly ever left out. */
const ALONE: Partial<Record<ColumnQuantity, number>> = {
  current_A: 0.3,
  speed_rpm: 0.3,
  flow_m3_s: 0.3,
  velocity_m_s: 0.3,
  inputPower_W: 0.3,
  staticPressure_Pa: 0.2,
};

/**
 * Names the columns of a table from what stands over them, all together: no quantity twice.
 * @param headers lines of text over each column, from the top down
 * @param mayBe whether a column's readings can be of a quantity, once they are known
 */
export function nameColumns(
  headers: readonly (readonly string[])[],
  mayBe: (quantity: ColumnQuantity, column: number) => boolean = () => true,
): NamedColumn[] {
  const guesses = headers.map((lines, column) =>
    guessesOf(lines)
      .filter(({ quantity }) => mayBe(quantity, column))
      .sort((a, b) => b.worth - a.worth),
  );
  const named: NamedColumn[] = headers.map(() => ({ quantity: null, unit: null, sureness: 0 }));
  const taken = new Set<ColumnQuantity>();
  const open = new Set(headers.keys());
  while (open.size) {
    let best: { column: number; guess: Guess; second: number } | null = null;
    for (const column of open) {
      const [guess, next] = guesses[column]!.filter(({ quantity }) => !taken.has(quantity));
      if (guess && (!best || guess.worth > best.guess.worth)) best = { column, guess, second: next?.worth ?? 0 };
    }
    if (!best || best.guess.worth < 0.3) break;
    open.delete(best.column);
    taken.add(best.guess.quantity);
    const { quantity, unit, worth } = best.guess;
    const lead = Math.min(1, Math.max(0, worth - best.second) / 0.25);
    named[best.column] = { quantity, unit, sureness: Math.min(1, worth / 0.9) * (0.5 + 0.5 * lead) };
  }
  return named;
}

/** A power's sign and its unit read as one word, the bracket between them lost or not; a small w only before one that closes. */
const parted = (line: string): string =>
  line.replace(/^[\s|[\]]*(P)[[(|]?(k?W(?=[\])|]?\s*$)|k?w(?=[\])|]\s*$))[\])|]?\s*$/, '$1 $2');

/** The units a heading may end with: where its last line is one of several letters a line above is none. */
function endsOf(lines: readonly string[]): Parted[] {
  const last = [...lines.slice(-1), lines.join(' ')].flatMap(unitsAtEnd);
  return last.some(({ letters }) => letters > 1) ? last : [...last, ...lines.slice(0, -1).flatMap(unitsAtEnd)];
}

/** A name is worth so much where a unit of another kind stands there for certain. */
const OUTSPOKEN = 0.35;
const CERTAIN = { likeness: 0.95, letters: 4 };

function guessesOf(read: readonly string[]): Guess[] {
  const lines = read.map(parted);
  const units = unitsIn(lines);
  const ends = endsOf(lines).map((one) => ({ ...one, passages: one.names.map(nameIn) }));
  const isCertain = ends.some(({ letters, likeness }) => likeness >= CERTAIN.likeness && letters >= CERTAIN.letters);
  const whole = passagesOf(lines.join(' '));
  const single = lines.map(passagesOf);
  const quantities = Object.keys(COLUMN_QUANTITIES) as ColumnQuantity[];
  const named = new Map(
    quantities.map((quantity) => {
      const names = COLUMN_NAMES[quantity];
      return [
        quantity,
        Math.max(nameAmong(names, whole), ...single.map((line) => 0.95 * nameAmong(names, line))),
      ] as const;
    }),
  );
  const clearest = Math.max(...named.values());
  return quantities.flatMap((quantity): Guess[] => {
    const names = COLUMN_NAMES[quantity];
    const name = named.get(quantity)!;
    const wanted: Quantity | null = COLUMN_QUANTITIES[quantity].of;
    if (wanted === null) {
      const hasUnit = units.length > 0 || ends.some(({ likeness }) => likeness > CLEAR_UNIT);
      return name > 0 && !hasUnit ? [{ quantity, unit: null, worth: name + 0.4 }] : [];
    }
    const exact = units.find((u) => u.quantity === wanted);
    const own = ends
      .filter(({ unit }) => unit.quantity === wanted)
      .map(({ unit, likeness, passages }) => {
        const called = Math.max(name, ...passages.map((some) => nameAmong(names, some)));
        const isOutspoken = isCertain && likeness < CERTAIN.likeness;
        // beside a clear name of another quantity a unit that is not read well says nothing by itself
        const isMute = clearest > CLEAR_NAME && called === 0 && likeness < CLEAR_UNIT;
        const worth = Math.max(called, isMute ? 0 : (ALONE[quantity] ?? 0)) + UNIT_WORTH * likeness;
        return { quantity, unit, worth: isOutspoken ? OUTSPOKEN * worth : worth };
      });
    if (exact) own.push({ quantity, unit: exact, worth: Math.max(name, ALONE[quantity] ?? 0) + UNIT_WORTH });
    if (own.length) return [surest(own)];
    // the raised 3 of a volume is easily lost
    const rate = wanted === 'flow' && name > 0.4 ? units.find((u) => VOLUMES[u.unit]) : undefined;
    if (rate) return [{ quantity, unit: unitCalled(VOLUMES[rate.unit]!), worth: name + 0.75 * UNIT_WORTH }];
    // "mm" over a vacuum is a height of water
    const spoken =
      wanted === 'pressure' && name > 0.5 ? units.map((u) => unitAsRead(u.unit, 'pressure')).find(Boolean) : null;
    if (spoken) return [{ quantity, unit: spoken, worth: name + 0.2 }];
    if (isCertain) return name > 0 ? [{ quantity, unit: null, worth: OUTSPOKEN * name }] : [];
    // a unit that does not fit a clear name was misread
    const isNamed = units.length ? name > CLEAR_NAME : name > 0;
    return isNamed ? [{ quantity, unit: null, worth: name * 0.6 + NO_UNIT_WORTH }] : [];
  });
}

/** What may be read as a sign of a formula by itself: a stroke is an I. */
const nameIn = (text: string) => passagesOf(/^[\s|]*$/.test(text) ? text.replace('|', 'l') : text);

/** Another unit of the same quantity that may stand there as well takes from the worth. */
const AS_LIKELY = 0.12;

/** The likeliest of several units of one quantity. */
function surest(guesses: readonly Guess[]): Guess {
  const best = guesses.reduce((a, b) => (b.worth > a.worth ? b : a));
  const other = Math.max(0, ...guesses.filter(({ unit }) => unit !== best.unit).map(({ worth }) => worth));
  return { ...best, worth: best.worth - Math.max(0, AS_LIKELY - (best.worth - other)) * UNIT_DOUBT };
}

/** Every unit a header names: a whole line, what stands in brackets or behind a comma, its last words. */
function unitsIn(lines: readonly string[]): Unit[] {
  const pieces = lines.toReversed().flatMap((line) => {
    const words = line.trim().split(/\s+/);
    return [
      ...[...line.matchAll(/[([{]([^)\]}]+)[)\]}]?/g)].map(([, inside]) => inside!),
      line,
      // a current's I before its unit
      line.replace(/^\s*[1Il|]\s*/, ''),
      ...(words.length > 1 ? [1, 2, 3].map((n) => words.slice(-n).join(' ')) : []),
      ...(/[,;:/]\s*([^,;:]+)$/.exec(line)?.slice(1) ?? []),
    ];
  });
  return pieces.map((piece) => unitAsRead(piece)).filter((unit) => unit !== null);
}
