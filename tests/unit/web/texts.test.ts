import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../web/cautions.ts';
import { LANGUAGES } from '../../../web/texts/index.ts';

type Leaf = { path: string; text: string };

/** Every text of a table; functions are called with the letters A, B, C so that their words can be read too. */
function leaves(table: unknown, path = ''): Leaf[] {
  if (typeof table === 'string') return [{ path, text: table }];
  if (typeof table === 'function') {
    const said = sample(table as (...args: unknown[]) => unknown);
    return [{ path, text: said }];
  }
  if (Array.isArray(table)) return table.flatMap((entry, i) => leaves(entry, `${path}/${i}`));
  if (table && typeof table === 'object')
    return Object.entries(table).flatMap(([key, entry]) => leaves(entry, `${path}/${key}`));
  return [];
}

/** Texts take names and numbers already written; a few take a count or a record first. */
function sample(say: (...args: unknown[]) => unknown): string {
  for (const args of [
    ['A', 'B', 'C', 'D'],
    [3, 'B', 'C'],
    [['A', 'B'], 'C'],
    [new Proxy({}, { get: (_, key) => (key === Symbol.toPrimitive ? () => 'A' : 'A') }), 'B'],
  ]) {
    try {
      const answer = say(...args);
      const said = Array.isArray(answer) ? answer.join(' ') : answer;
      if (typeof said === 'string' && said !== '') return said;
    } catch {
      // the next kind of argument fits this one
    }
  }
  return '';
}

/** Left empty on purpose: these wheels are not drawn in a casing; English needs no second names for what was typed in English. */
const MAY_BE_EMPTY = [/\/rotationWords\/(axial|through-flow-vacuum)$/, /\/(fails|doubts)\/loaded-filters$/];

describe('the table of texts', () => {
  const english = leaves(LANGUAGES.en.texts);

  it.each(Object.keys(LANGUAGES) as (keyof typeof LANGUAGES)[])('is complete in %s', (language) => {
    const own = leaves(LANGUAGES[language].texts);
    const paths = new Set(own.map((leaf) => leaf.path));
    const free = (path: string): boolean =>
      path.includes('/machineWords/') || path.includes('/planWords/') || path.startsWith('/warnings/');
    expect(english.filter((leaf) => !free(leaf.path) && !paths.has(leaf.path))).toEqual([]);
    expect(own.filter((leaf) => leaf.text.trim() === '' && !MAY_BE_EMPTY.some((one) => one.test(leaf.path)))).toEqual(
      [],
    );
  });

  it('says nothing in Urdu with English letters but names, units and signs', () => {
    const allowed =
      /\b(JPEG|PNG|WebP|kW|HP|kg|DC|KES|in|mm|D|cos|log|A|B|C|Pa|IP|CFM|m|s|h|Hz|V|rpm|PVC|undefined|NaN)\b/g;
    const foreign = leaves(LANGUAGES.ur.texts)
      .map(({ path, text }) => ({ path, left: text.replace(allowed, '').match(/[A-Za-z]{3,}/g) }))
      .filter(({ left }) => left !== null);
    expect(foreign).toEqual([]);
  });

  it('turns right to left with Urdu', () => {
    expect(LANGUAGES.ur.direction).toBe('rtl');
    expect(LANGUAGES.en.direction).toBe('ltr');
  });
});

describe('cautions', () => {
  it.each(Object.entries(CAUTIONS))(
    '%s has a short and a long sentence in both languages, and a source',
    (_name, caution) => {
      for (const language of ['en', 'ur'] as const) {
        expect(caution[language].short.length).toBeGreaterThan(8);
        expect(caution[language].short.length).toBeLessThan(60);
        expect(caution[language].long.length).toBeGreaterThan(caution[language].short.length);
      }
      expect(caution.source.length).toBeGreaterThan(10);
    },
  );

  it('covers every danger the program knows of, and sends mains work to a licensed electrician', () => {
    expect(Object.keys(CAUTIONS)).toEqual(
      expect.arrayContaining([
        'dustExplosion',
        'sparks',
        'plasticStatic',
        'burstingWheel',
        'belt',
        'mains',
        'collapsingDrum',
        'returnedAir',
        'mask',
      ]),
    );
    expect(CAUTIONS.mains.en.long).toContain('licensed electrician');
    expect(CAUTIONS.returnedAir.en.long).toContain('Never call returned air safe');
  });
});
