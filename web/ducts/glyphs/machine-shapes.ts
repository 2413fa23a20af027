import type { MachineKindName } from '../layout/machine-kinds.ts';

/** Line work of a machine seen from the side: closed bodies, single lines, heavy lines. Middle of the foot at 0,0. */
export type MachineShape = { bodies: string[]; lines: string[]; heavy?: string };

export const MACHINE_SHAPES: Record<MachineKindName, MachineShape> = {
  planer: {
    bodies: [
      'M-34 0V-42H34V0z',
      'M-58 -50H58V-42H-58z',
      'M-34 -92H34V-60H-34z',
      'M-26 -92L-13 -106H13L26 -92z',
      'M6 -63a6 6 0 1 0 -12 0a6 6 0 1 0 12 0z',
    ],
    lines: ['M-28 -60V-50M28 -60V-50M-34 -70H-6M6 -70H34M34 -84h10v-5', 'M-20 -20h40'],
    heavy: 'M-72 -55.5H70',
  },
  'table-saw': {
    bodies: ['M-20 -73a19 19 0 0 1 38 0z', 'M-38 0L-34 -64H34L38 0z', 'M-58 -73H58V-64H-58z'],
    lines: [
      'M-16 -86l-3 -4M-1 -92v-5M14 -86l3 -4',
      'M-50 -73v-9h14v9',
      'M0 -30a8 8 0 1 0 -16 0a8 8 0 1 0 16 0z',
      'M-8 -30v-12',
    ],
  },
  'band-saw': {
    bodies: ['M-30 0V-150a10 10 0 0 1 10 -10H18a12 12 0 0 1 12 12V-116H-12V-64H30V0z', 'M-14 -80H44V-72H-14z'],
    lines: [
      'M20 -138a16 16 0 1 0 -32 0a16 16 0 1 0 32 0z',
      'M20 -32a16 16 0 1 0 -32 0a16 16 0 1 0 32 0z',
      'M20 -116V-80M17 -116v14h6v-14',
    ],
  },
  sander: {
    bodies: [
      'M-34 0L-28 -46H28L34 0z',
      'M-52 -46H52V-54H-52z',
      'M-58 -74a10 10 0 0 1 10 -10H48a10 10 0 0 1 0 20H-48a10 10 0 0 1 -10 -10z',
    ],
    lines: [
      'M-42 -74a6 6 0 1 0 -12 0a6 6 0 1 0 12 0z',
      'M54 -74a6 6 0 1 0 -12 0a6 6 0 1 0 12 0z',
      'M-30 -84l4 -4M-14 -84l4 -4M2 -84l4 -4M18 -84l4 -4M34 -84l4 -4',
      'M-30 -96v8M-30 -96H-8v8',
    ],
  },
  drill: {
    bodies: ['M-34 0V-8H34V0z', 'M-22 -8V-150H-12V-8z', 'M-28 -150H34V-112H-12V-150z', 'M-20 -62H32V-54H-20z'],
    lines: [
      'M16 -112v16M10 -96h12l-3 8h-6z',
      'M16 -88v18',
      'M34 -132h-8M-12 -126l-12 10M-24 -116l-6 2',
      'M-8 -54l-4 12',
    ],
  },
  spindle: {
    bodies: ['M-36 0L-34 -66H34L36 0z', 'M-58 -75H58V-66H-58z', 'M-24 -75V-96H-6V-75z', 'M14 -75V-100H50V-75z'],
    lines: ['M4 -75v-17M-1 -92h10v10h-10z', 'M-18 -30h36M0 -44a8 8 0 1 0 0.1 0z'],
  },
  lathe: {
    bodies: [
      'M-62 0V-48H-44V0z',
      'M44 0V-48H62V0z',
      'M-72 -56H72V-48H-72z',
      'M-70 -86H-40V-56H-70z',
      'M48 -76H66V-56H48z',
      'M-8 -100H20L30 -84H-18z',
    ],
    lines: ['M-40 -72H48', 'M-36 -66H44V-78H-36z', 'M-18 -84L6 -78L30 -84'],
  },
  grinder: {
    bodies: [
      'M-26 0V-6H26V0z',
      'M-9 -6L-7 -62H7L9 -6z',
      'M-20 -90H20V-62H-20z',
      'M-20 -76a18 18 0 1 0 -18 18H-20z',
      'M20 -76a18 18 0 1 1 18 18H20z',
    ],
    lines: [
      'M-28 -76a10 10 0 1 0 -20 0a10 10 0 1 0 20 0z',
      'M48 -76a10 10 0 1 0 -20 0a10 10 0 1 0 20 0z',
      'M-10 -76h20',
      'M-58 -60h14M44 -60h14',
    ],
  },
  sewing: {
    bodies: [
      'M-56 0V-46H-50V0z',
      'M50 0V-46H56V0z',
      'M-66 -54H66V-46H-66z',
      'M-44 -54V-64H38V-54z',
      'M20 -64V-104H-44V-84H-30V-88H6V-64z',
    ],
    lines: ['M-37 -84v14M-40 -70h6', 'M34 -84a14 14 0 1 0 -28 0', 'M36 -104a16 16 0 1 0 0.1 0z', 'M30 -46v10h-18'],
  },
  textile: {
    bodies: [
      'M-60 0V-26H60V0z',
      'M-44 -62a36 36 0 0 1 72 0a36 36 0 0 1 -72 0z',
      'M30 -46a15 15 0 0 1 30 0a15 15 0 0 1 -30 0z',
      'M-62 -40a9 9 0 0 1 18 0a9 9 0 0 1 -18 0z',
      'M-22 -96L-12 -112H12L20 -92z',
    ],
    lines: ['M-24 -62a16 16 0 0 1 32 0a16 16 0 0 1 -32 0z', 'M-40 -80l-6 -4M-32 -91l-4 -6M24 -84l6 -4', 'M-30 -12h60'],
  },
  sweep: {
    bodies: ['M-40 0L-30 -14H18V-22H30V0z'],
    lines: ['M-46 -2h6M-34 -4l-4 4M-22 -6l-3 6'],
  },
  generic: {
    bodies: ['M-38 0V-58H38V0z', 'M-46 -66H46V-58H-46z', 'M-30 -66L-12 -96H12L30 -66z'],
    lines: ['M-22 -40h44M-22 -28h44', 'M-28 0v-8M28 0v-8'],
  },
};
