/** Units as they end the names of the document's fields, and how a sentence says them. */
const UNIT_WORDS: Record<string, string> = {
  m: 'metres',
  m2: 'square metres',
  m3: 'cubic metres',
  m3_s: 'cubic metres a second',
  m_s: 'metres a second',
  Pa: 'pascals',
  W: 'watts',
  C: 'degrees Celsius',
  rpm: 'turns a minute',
  V: 'volts',
  A: 'amperes',
  Hz: 'hertz',
  deg: 'degrees',
  s: 'seconds',
  kg: 'kilograms',
  kg_h: 'kilograms an hour',
  kg_m3: 'kilograms a cubic metre',
};

/** A field's name cut into what it is and the unit it is in: `diameter_m` → `diameter`, `metres`. */
export function unitOfName(name: string): { stem: string; unit: string | undefined } {
  const cut = name.indexOf('_');
  if (cut < 1) return { stem: name, unit: undefined };
  return { stem: name.slice(0, cut), unit: UNIT_WORDS[name.slice(cut + 1)] };
}

/** The known field that means the same thing in the document's own unit: `diameter_mm` or `diameter` → `diameter_m`. */
export function sameThingInOurUnit(given: string, known: readonly string[]): string | undefined {
  const stem = unitOfName(given).stem.toLowerCase();
  return known.find((name) => unitOfName(name).unit !== undefined && unitOfName(name).stem.toLowerCase() === stem);
}
