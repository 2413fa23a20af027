import { expect, test } from 'vitest';
import { layout, PHONE } from '../../../../web/ducts/layout.ts';
import { placeLabels } from '../../../../web/ducts/layout/labels.ts';
import { wrapName } from '../../../../web/ducts/layout/wrap-name.ts';
import { textWidth } from '../../../../web/ducts/layout/metrics.ts';
import { comb, fourLevels, threeMachines } from './shops.ts';

test.each([threeMachines(), comb(12), fourLevels()])('no two labels lie on each other, nor on a machine', (shop) => {
  const sheet = layout(shop, PHONE);
  const labels = placeLabels(
    sheet,
    sheet.pipes.map((pipe) => ({ pipe, lines: [['main, 160 mm', '23 m/s'], ['23 m/s']], tone: 'air' as const })),
    PHONE,
  );
  expect(labels.length).toBeGreaterThan(shop.sections.length / 2);
  const boxes = [...labels.map((label) => label.box), ...sheet.machines.map((machine) => machine.box)];
  const clash = labels.flatMap(({ box, lines }) =>
    boxes
      .filter(
        (other) =>
          other !== box &&
          box.x < other.x + other.width &&
          other.x < box.x + box.width &&
          box.y < other.y + other.height &&
          other.y < box.y + box.height,
      )
      .map(() => lines.join()),
  );
  expect(clash).toEqual([]);
});

test('a wish that fits nowhere stays unsaid', () => {
  const sheet = layout(threeMachines(), PHONE);
  const endless = 'x'.repeat(400);
  expect(placeLabels(sheet, [{ pipe: sheet.pipes[0]!, lines: [[endless]], tone: 'ink' }], PHONE)).toEqual([]);
});

test('names break into two lines and end in an ellipsis only when they must', () => {
  expect(wrapName('saw', 66, 13)).toEqual(['saw']);
  expect(wrapName('thickness planer', 70, 13)).toEqual(['thickness', 'planer']);
  const long = wrapName('double-sided tenoning machine of the old workshop', 66, 13);
  expect(long).toHaveLength(2);
  expect(long[1]!.endsWith('…')).toBe(true);
  for (const line of long) expect(textWidth(line, 13)).toBeLessThanOrEqual(66);
});
