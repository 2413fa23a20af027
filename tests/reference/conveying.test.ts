import { describe, expect, test } from 'vitest';
import { MATERIALS } from '../../src/duct/index.ts';
import { readReference } from './read-reference.ts';

/** fixtures/reference/conveying.json, `transport_velocity`: classes of dust and their lowest speeds. */

type Row = { class?: string; dust?: string; m_s: [number, number | null] | number; source: string };
const { rows } = readReference<{ sections: { transport_velocity: { rows: Row[] } } }>('conveying.json').sections
  .transport_velocity;

/** Rows of the same stuff as a material of the program. */
const CLASSES: Record<keyof typeof MATERIALS, string[]> = {
  'wood-shavings': ['heavy dusts', 'dry dusts and powders'],
  'wood-dust': ['average industrial dust', 'heavy dusts'],
  'metal-grinding': ['average industrial dust', 'grinding wheels: main'],
  'textile-lint': ['very fine light dust', 'fine dry dust: wood dust, lint'],
  'light-powder': ['dry dusts and powders', 'dry dusts and powders: fine rubber, cotton, light shavings'],
};

describe('lowest transport speeds', () => {
  test.each(Object.entries(MATERIALS))(
    '%s is within or above a published class, and names its source',
    (name, material) => {
      const own = rows.filter((row) => CLASSES[name as keyof typeof MATERIALS].includes(row.class ?? ''));
      expect(own.length).toBeGreaterThan(1);
      const lows = own.map(({ m_s }) => (Array.isArray(m_s) ? m_s[0] : m_s));
      const highs = own.map(({ m_s }) => (Array.isArray(m_s) ? (m_s[1] ?? Infinity) : m_s));
      expect(material.minimumVelocity_m_s).toBeGreaterThanOrEqual(Math.min(...lows));
      expect(material.minimumVelocity_m_s).toBeLessThanOrEqual(Math.max(...highs));
      expect(material.source).toMatch(/ACGIH|HSE|HSA/);
    },
  );

  test('mixed wood dust and chips: 17.5–23 m/s by the tolerance of the file', () => {
    for (const name of ['wood-dust', 'wood-shavings'] as const) {
      expect(MATERIALS[name].minimumVelocity_m_s).toBeGreaterThanOrEqual(17.5);
      expect(MATERIALS[name].minimumVelocity_m_s).toBeLessThanOrEqual(23);
    }
  });
});
