import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { A4, holeSheets, WINDOW, type HoleSheet } from '../../../web/readings/hole-sheet-layout.ts';

/** Whether a point of the drawing, given from its centre, can be seen on a sheet. */
const shows = ({ centre }: HoleSheet, x: number, y: number): boolean =>
  centre.x + x >= WINDOW.x - 1e-9 &&
  centre.x + x <= WINDOW.x + WINDOW.width + 1e-9 &&
  centre.y + y >= WINDOW.y - 1e-9 &&
  centre.y + y <= WINDOW.y + WINDOW.height + 1e-9;

describe('the sheets of holes', () => {
  it('are one A4 page with all holes around one centre where the pipe fits on it', () => {
    const sheets = holeSheets([90, 45, 60], 160, false);
    expect(sheets).toEqual([
      {
        holes: [45, 60, 90],
        centre: { x: A4.width / 2, y: WINDOW.y + WINDOW.height / 2 },
        part: { column: 1, row: 1, columns: 1, rows: 1 },
        joins: [],
      },
    ]);
  });

  it('are one for each board when asked for', () => {
    expect(holeSheets([90, 45, 60], 160, true).map((s) => s.holes)).toEqual([[45], [60], [90]]);
  });

  it('of any pipe show the whole of its circle together, and neighbours share their crosses', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 900 }), (widest) => {
        const sheets = holeSheets([40], widest, false);
        for (let degrees = 0; degrees < 360; degrees += 5) {
          const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
          expect(sheets.some((s) => shows(s, (x * widest) / 2, (y * widest) / 2))).toBe(true);
        }
        if (sheets.length > 1) {
          const seen = new Map<string, number>();
          for (const { centre, joins } of sheets)
            for (const j of joins) {
              const key = `${(j.x - centre.x).toFixed(3)} ${(j.y - centre.y).toFixed(3)}`;
              seen.set(key, (seen.get(key) ?? 0) + 1);
            }
          expect(seen.size).toBeGreaterThan(0);
          for (const times of seen.values()) expect(times).toBeGreaterThanOrEqual(2);
        }
      }),
      { numRuns: 40 },
    );
  });
});
