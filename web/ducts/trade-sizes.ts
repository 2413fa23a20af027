import type { Surface } from '../../src/pipe/index.ts';

/** A pipe as a shop sells it: the name on the shelf, and the inside that counts. */
export type TradeSize = { name: string; inside_m: number };
export type TradeFamily = {
  family: 'drain' | 'sheet' | 'hose';
  surfaces: readonly Surface[];
  sizes: readonly TradeSize[];
  source: string;
};

const drain = (outside_mm: number, wall_mm: number): TradeSize => ({
  name: String(outside_mm),
  inside_m: Math.round((outside_mm - 2 * wall_mm) * 10) / 1e4,
});
const nominal = (name: string, inside_mm: number): TradeSize => ({ name, inside_m: inside_mm / 1000 });

/**
 * What is sold, by kind of pipe. Walls differ between makers and classes, so the inside diameter of what is there,
 * measured, always wins; these are starting points to tap.
 */
export const TRADE_SIZES: readonly TradeFamily[] = [
  {
    family: 'drain',
    surfaces: ['drain-pipe', 'pvc-pipe', 'cement'],
    sizes: [drain(75, 3), drain(90, 3), drain(110, 3.2), drain(125, 3.2), drain(160, 3.2), drain(200, 3.9)],
    source: 'outside diameters and least walls of PVC-U soil and waste pipe, EN 1329-1 area B (recalled)',
  },
  {
    family: 'sheet',
    surfaces: ['galvanised-duct', 'spiral-duct', 'rusted-steel', 'plywood'],
    sizes: [
      nominal('80', 80),
      nominal('100', 100),
      nominal('125', 125),
      nominal('160', 160),
      nominal('200', 200),
      nominal('250', 250),
      nominal('315', 315),
    ],
    source: 'nominal sizes of round sheet-metal duct, EN 1506; the nominal size is the inside (recalled)',
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

/** The sizes a surface comes in; drain pipe where nothing is said. */
export const sizesFor = (surface: Surface | null | undefined): TradeFamily =>
  TRADE_SIZES.find((family) => surface && family.surfaces.includes(surface)) ?? TRADE_SIZES[0]!;
