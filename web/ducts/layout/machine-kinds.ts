/**
 * What a machine looks like from the side, by the words in its name. Extents and the port stand in the glyph's own units
 * around the middle of its foot on the floor line; `side` ports leave to the right, `up` ports at the top.
 */
export type MachineKind = {
  kind: string;
  words: RegExp;
  left: number;
  right: number;
  height: number;
  port: { x: number; y: number; way: 'up' | 'side' };
};

export const MACHINE_KINDS = [
  {
    kind: 'band-saw',
    words: /band ?saw|بینڈ ?آرا/i,
    left: 32,
    right: 46,
    height: 162,
    port: { x: 30, y: -32, way: 'side' },
  },
  {
    kind: 'planer',
    words: /plan(er|ing)|thickness|joint(er|ing)|surfacer|رندہ/i,
    left: 72,
    right: 72,
    height: 106,
    port: { x: 0, y: -106, way: 'up' },
  },
  {
    kind: 'sander',
    words: /sand(er|ing)|ریگمال/i,
    left: 60,
    right: 60,
    height: 96,
    port: { x: 56, y: -66, way: 'side' },
  },
  { kind: 'drill', words: /drill|mortis|ڈرل/i, left: 36, right: 36, height: 150, port: { x: 26, y: -66, way: 'side' } },
  {
    kind: 'spindle',
    words: /rout(er|ing)|spindle|mould(er|ing)|shaper|راؤٹر/i,
    left: 58,
    right: 58,
    height: 104,
    port: { x: 52, y: -86, way: 'side' },
  },
  { kind: 'lathe', words: /lathe|turning|خراد/i, left: 74, right: 74, height: 100, port: { x: 6, y: -100, way: 'up' } },
  {
    kind: 'grinder',
    words: /grind|buff|polish|گرائنڈ/i,
    left: 48,
    right: 52,
    height: 112,
    port: { x: 44, y: -74, way: 'side' },
  },
  {
    kind: 'sewing',
    words: /sew|overlock|stitch|tailor|سلائی/i,
    left: 66,
    right: 66,
    height: 108,
    port: { x: 44, y: -48, way: 'side' },
  },
  {
    kind: 'textile',
    words: /card|lint|cotton|loom|spin(ning)?|wool|textile|کپاس|دھنائی/i,
    left: 66,
    right: 66,
    height: 112,
    port: { x: 0, y: -112, way: 'up' },
  },
  {
    kind: 'sweep',
    words: /sweep|floor|bench|fl[oö]or|فرش|میز/i,
    left: 46,
    right: 46,
    height: 40,
    port: { x: 28, y: -12, way: 'side' },
  },
  { kind: 'table-saw', words: /saw|آرا/i, left: 58, right: 58, height: 96, port: { x: 36, y: -34, way: 'side' } },
  { kind: 'generic', words: /(?:)/, left: 46, right: 46, height: 96, port: { x: 0, y: -96, way: 'up' } },
] as const satisfies readonly MachineKind[];

export type MachineKindName = (typeof MACHINE_KINDS)[number]['kind'];
type Kind = MachineKind & { kind: MachineKindName };

/** The first kind whose words stand in the name; the last row takes what nobody else knows. */
export const machineKind = (name: string): Kind => MACHINE_KINDS.find((row) => row.words.test(name))! as Kind;
