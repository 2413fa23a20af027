/** How big the drawing is: every distance of the side view in px of the drawing, for a phone and for a desk. */
export type Metrics = {
  /** width of pipes to scale: millimetres of the shop per px */
  mmPerPx: number;
  /** scale of the machine glyphs, drawn on a floor line in units of their own */
  machine: number;
  edge: number;
  gap: number;
  /** y of the highest main, and how much lower each sub-main runs */
  top: number;
  levelStep: number;
  /** from the lowest main down to the floor: alone, and where sub-mains take room above */
  riser: number;
  riserUnderLevels: number;
  belowFloor: number;
  /** how far below a main a branch leaves its vertical, and how far right it lands */
  join: number;
  tail: number;
  stub: number;
  cyclone: { width: number; height: number };
  filters: { width: number; height: number };
  /** scale of the blower glyph and height of its shaft above the floor */
  blower: number;
  shaftHeight: number;
  hoop: number;
  /** up through the roof where width is dear, through the wall where it is not */
  wayOut: 'up' | 'wall';
  font: number;
  /** room beside a riser for its speed */
  speedRoom: number;
  nameWidth: number;
};

export const PHONE: Metrics = {
  mmPerPx: 7.6,
  machine: 0.5,
  edge: 10,
  gap: 9,
  top: 76,
  levelStep: 66,
  riser: 288,
  riserUnderLevels: 214,
  belowFloor: 44,
  join: 32,
  tail: 14,
  stub: 8,
  cyclone: { width: 47, height: 154 },
  filters: { width: 50, height: 152 },
  blower: 1,
  shaftHeight: 31,
  hoop: 56,
  wayOut: 'up',
  font: 13,
  speedRoom: 48,
  nameWidth: 66,
};

/** A small shop on a small screen: everything a little nearer, so that nothing need be scrolled. */
export const TIGHT: Metrics = {
  ...PHONE,
  mmPerPx: 9,
  machine: 0.42,
  edge: 6,
  gap: 5,
  join: 26,
  tail: 8,
  stub: 5,
  cyclone: { width: 40, height: 148 },
  filters: { width: 42, height: 146 },
  blower: 0.88,
  shaftHeight: 27.3,
  hoop: 46,
  speedRoom: 45,
  nameWidth: 66,
};

export const DESK: Metrics = {
  mmPerPx: 4.6,
  machine: 0.92,
  edge: 20,
  gap: 16,
  top: 104,
  levelStep: 92,
  riser: 404,
  riserUnderLevels: 300,
  belowFloor: 50,
  join: 52,
  tail: 22,
  stub: 16,
  cyclone: { width: 90, height: 200 },
  filters: { width: 78, height: 184 },
  blower: 2,
  shaftHeight: 62,
  hoop: 92,
  wayOut: 'wall',
  font: 14,
  speedRoom: 74,
  nameWidth: 110,
};

/** Width of a line of lettering, near enough to keep labels apart before a browser has measured them. */
export const textWidth = (text: string, font: number): number => [...text].length * font * 0.56;

/** Distances between two drawings' sizes: 0 is the first, 1 the second. */
export function between(small: Metrics, large: Metrics, share: number): Metrics {
  const mix = (a: number, b: number) => a + (b - a) * share;
  const size = (a: Metrics['filters'], b: Metrics['filters']) => ({
    width: mix(a.width, b.width),
    height: mix(a.height, b.height),
  });
  const numbers = Object.fromEntries(
    Object.entries(small).flatMap(([name, value]) =>
      typeof value === 'number' ? [[name, mix(value, large[name as keyof Metrics] as number)]] : [],
    ),
  );
  return {
    ...large,
    ...numbers,
    cyclone: size(small.cyclone, large.cyclone),
    filters: size(small.filters, large.filters),
  };
}
