import { describe, expect, it } from 'vitest';
import { closeStep, record, redo, startHistory, undo } from '../../../web/state/history.ts';

describe('undo', () => {
  it('goes back and forth through every change, and knows why each was made', () => {
    let h = record(record(startHistory('a'), 'wheel', 'b'), 'motor', 'c');
    expect(h.past.map((change) => change.note)).toEqual(['wheel', 'motor']);
    h = undo(h);
    expect(h.present).toBe('b');
    expect(h.undone.at(-1)!.note).toBe('motor');
    h = undo(h);
    expect(h.present).toBe('a');
    expect(undo(h)).toBe(h);
    h = redo(redo(h));
    expect(h.present).toBe('c');
    expect(redo(h)).toBe(h);
  });

  it('takes a number typed letter by letter as one step, until the field is left', () => {
    let h = startHistory('');
    for (const text of ['1', '15', '150']) h = record(h, 'value', text, 'altitude');
    expect(h.past).toHaveLength(1);
    h = record(closeStep(h), 'value', '1500', 'altitude');
    expect(h.past).toHaveLength(2);
    expect(undo(h).present).toBe('150');
    expect(undo(undo(h)).present).toBe('');
  });

  it('forgets what was undone once something else is done, and never keeps more than 200 steps', () => {
    const h = record(undo(record(startHistory(0), 'value', 1)), 'value', 2);
    expect(h.undone).toEqual([]);
    let long = startHistory(0);
    for (let i = 1; i <= 250; i += 1) long = record(long, 'value', i);
    expect(long.past).toHaveLength(200);
    expect(long.past[0]!.before).toBe(50);
  });

  it('writes nothing down when nothing changed', () => {
    const h = startHistory({ a: 1 });
    expect(record(h, 'value', h.present)).toBe(h);
  });
});
