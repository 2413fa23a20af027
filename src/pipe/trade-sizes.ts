import type { Surface } from './surfaces.ts';

/** A pipe as a shop sells it: the name on the shelf, and the inside diameter [m] that counts. */
export type TradeSize = { name: string; inside_m: number };

/** Sizes sold of one kind of pipe, narrowest first. */
export type TradeFamily = {
  family: 'drain' | 'inch-pipe' | 'sheet' | 'inch-sheet' | 'hose';
  surfaces: readonly Surface[];
  sizes: readonly TradeSize[];
  source: string;
};

const pipe = (name: string, outside_mm: number, wall_mm: number): TradeSize => ({
  name,
  inside_m: Math.round((outside_mm - 2 * wall_mm) * 10) / 1e4,
});
const drain = (outside_mm: number, wall_mm: number): TradeSize => pipe(String(outside_mm), outside_mm, wall_mm);
const nominal = (name: string, inside_mm: number): TradeSize => ({ name, inside_m: inside_mm / 1000 });

const PLASTIC = ['drain-pipe', 'pvc-pipe', 'cement'] as const;
const SHEET = ['galvanised-duct', 'spiral-duct', 'rusted-steel', 'plywood'] as const;

/**
 * What is sold, by kind of pipe. Walls differ between makers and classes, so the inside diameter of what is there,
 * measured, always wins; these are starting points to tap.
 */
export const TRADE_SIZES: readonly TradeFamily[] = [
  {
    family: 'drain',
    surfaces: PLASTIC,
    sizes: [drain(75, 3), drain(90, 3), drain(110, 3.2), drain(125, 3.2), drain(160, 3.2), drain(200, 3.9)],
    source: 'outside diameters and least walls of PVC-U soil and waste pipe, EN 1329-1 area B (recalled)',
  },
  {
    family: 'inch-pipe',
    surfaces: PLASTIC,
    sizes: [
      pipe('2″', 60.3, 3.9),
      pipe('3″', 88.9, 5.5),
      pipe('4″', 114.3, 6),
      pipe('6″', 168.3, 7.1),
      pipe('8″', 219.1, 8.2),
    ],
    source: 'outside diameters and walls of schedule 40 pipe, ASTM D1785 (recalled)',
  },
  {
    family: 'sheet',
    surfaces: SHEET,
    sizes: [80, 100, 125, 160, 200, 250, 315].map((mm) => nominal(String(mm), mm)),
    source: 'nominal sizes of round sheet-metal duct, EN 1506; the nominal size is the inside (recalled)',
  },
  {
    family: 'inch-sheet',
    surfaces: SHEET,
    sizes: [3, 4, 5, 6, 8, 10, 12].map((inches) => nominal(`${inches}″`, inches * 25.4)),
    source: 'round sheet-metal duct by the inch; the nominal size is the inside; common practice',
  },
  {
    family: 'hose',
    surfaces: ['flexible-hose', 'smooth-bore-hose', 'aluminium-flex'],
    sizes: [
      nominal('2″', 50.8),
      nominal('63', 63),
      nominal('3″', 76.2),
      nominal('4″', 101.6),
      nominal('5″', 127),
      nominal('6″', 152.4),
      nominal('8″', 203.2),
    ],
    source: 'hose is sold by its inside, in inches or mm; common practice',
  },
];

/** Inside diameters closer than this [m] are one size: walls differ by as much between makers. */
const SAME_SIZE_M = 0.0006;

/** Whether a pipe of this inside diameter [m] is this size. */
export const isSize = (size: TradeSize, inside_m: number): boolean => Math.abs(size.inside_m - inside_m) < SAME_SIZE_M;

/** The families a surface is sold in, the usual one first; plastic pipe where nothing is said. */
export function familiesFor(surface: Surface | null | undefined): readonly TradeFamily[] {
  const sold = TRADE_SIZES.filter(({ surfaces }) => surface != null && surfaces.includes(surface));
  return sold.length > 0 ? sold : TRADE_SIZES.filter(({ surfaces }) => surfaces === PLASTIC);
}

/** The family a pipe of this inside diameter [m] was bought from; the usual one where no size fits. */
export function familyOf(surface: Surface | null | undefined, inside_m: number): TradeFamily {
  const families = familiesFor(surface);
  return families.find(({ sizes }) => sizes.some((size) => isSize(size, inside_m))) ?? families[0]!;
}
