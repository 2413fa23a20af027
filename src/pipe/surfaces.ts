/** What is known of an inner surface of a pipe. */
export type SurfaceRecord = {
  label: string;
  /** height of the equivalent sand grain [m] */
  roughness_m: number;
  /** one standard deviation of ln(roughness) [-]: 0.7 means that twice and half are both quite possible */
  doubt: number;
  /** hoses err together (how far they are pulled out), plain pipes err together (joints, age) */
  doubtKind: 'pipe-roughness' | 'hose-roughness';
  source: string;
};

/**
 * Inner surfaces of pipes. Where sources disagree one value is declared and the spread stays as doubt.
 * Rows and their sources: fixtures/reference/friction.json (`roughness`) and fixtures/reference/workshop.json (`roughness`).
 */
export const SURFACES = {
  'galvanised-duct': {
    label: 'galvanised sheet duct',
    roughness_m: 0.00015,
    doubt: 0.35,
    doubtKind: 'pipe-roughness',
    source:
      'ASHRAE Fundamentals, duct roughness table: round, longitudinal seam, joints every 0.75 m 0.152 mm (Moody: galvanised iron 0.152); with joints 1.2 m apart 0.049–0.098 mm, hence the doubt',
  },
  'spiral-duct': {
    label: 'spiral duct',
    roughness_m: 0.00009,
    doubt: 0.3,
    doubtKind: 'pipe-roughness',
    source:
      'ASHRAE Fundamentals, duct roughness table: spiral seam, joints every 3 m (Jones 1979) 0.061–0.122 mm, average class 0.091 mm',
  },
  'pvc-pipe': {
    label: 'PVC pressure pipe',
    roughness_m: 0.00003,
    doubt: 0.75,
    doubtKind: 'pipe-roughness',
    source:
      'ASHRAE Fundamentals, duct roughness table: PVC (Swim 1982) 0.009–0.046 mm; other tables 0.0015–0.007 mm for new pipe',
  },
  'drain-pipe': {
    label: 'plastic drain pipe',
    roughness_m: 0.00005,
    doubt: 0.6,
    doubtKind: 'pipe-roughness',
    source:
      'hydraulic design tables (recalled): PVC drain with sockets 0.03 mm good, 0.06 mm normal; range 0.0015–0.06 mm',
  },
  'flexible-hose': {
    label: 'ribbed flexible hose',
    roughness_m: 0.003,
    doubt: 0.75,
    doubtKind: 'hose-roughness',
    source:
      'ASHRAE Fundamentals 1993–2005, category rough (recalled): 1–4.6 mm, typical 3 mm. Machine manuals give 229 Pa/m and an engineering fit 90 Pa/m for 4 in at 20 m/s: 9 mm and 0.9 mm. A squeezed hose loses far more',
  },
  'smooth-bore-hose': {
    label: 'smooth-bore hose',
    roughness_m: 0.0009,
    doubt: 0.5,
    doubtKind: 'hose-roughness',
    source:
      'experience range of clear wire-reinforced hose, straight (no primary source found): 0.3–1.5 mm; ASHRAE flexible duct, extended, up to 0.91 mm; public list of pipe roughness, wire-reinforced rubber hose 0.3–4 mm',
  },
  'aluminium-flex': {
    label: 'aluminium flex',
    roughness_m: 0.003,
    doubt: 0.6,
    doubtKind: 'hose-roughness',
    source: 'ASHRAE Fundamentals 1993–2005 (recalled): metallic corrugated duct, fully extended 1–4.6 mm, typical 3 mm',
  },
  plywood: {
    label: 'plywood channel',
    roughness_m: 0.0005,
    doubt: 0.6,
    doubtKind: 'pipe-roughness',
    source: 'public duct roughness tables: planed wood 0.18–0.9 mm, plank 0.5 mm; ordinary sawn wood 5 mm',
  },
  cement: {
    label: 'cement pipe',
    roughness_m: 0.001,
    doubt: 0.7,
    doubtKind: 'pipe-roughness',
    source: 'Binder, Fluid Mechanics 1973: concrete 0.3–3 mm; public duct roughness table: ordinary concrete 0.3–1 mm',
  },
  'rusted-steel': {
    label: 'rusted steel',
    roughness_m: 0.0009,
    doubt: 0.7,
    doubtKind: 'pipe-roughness',
    source: 'public duct roughness table: rusted steel 0.15–4 mm; moderately corroded 0.15–1 mm, badly 1–3 mm',
  },
} as const satisfies Record<string, SurfaceRecord>;

/** A name in the table of surfaces. */
export type Surface = keyof typeof SURFACES;
/** All names in the table of surfaces, in its order. */
export const SURFACE_NAMES = Object.keys(SURFACES) as [Surface, ...Surface[]];

/** Roughness taken where nothing is said: the commonest duct, with a doubt wide enough for most others. */
export const UNKNOWN_SURFACE: SurfaceRecord = { ...SURFACES['galvanised-duct'], label: 'unknown surface', doubt: 0.9 };
