import type { Element } from '../../../src/duct/elements/index.ts';
import type { Section } from '../../../src/job/types.ts';
import type { MachineKindName } from './machine-kinds.ts';
import type { Metrics } from './metrics.ts';
import type { Point } from './polyline.ts';

export type Box = { x: number; y: number; width: number; height: number };

/** Where a piece stands in the job: a section's id, or the run behind the blower; `index` of its element, null for the section as a whole. */
export type Place = { section: string | 'discharge'; index: number | null };
export const DISCHARGE = 'discharge';

export type PlacedMachine = {
  section: string;
  kind: MachineKindName;
  /** middle of its foot on the floor */
  x: number;
  /** middle of its name: under the machine and its riser together */
  nameX: number;
  box: Box;
  name: string;
  nameLines: string[];
};

/** A thing that stands on the floor in the air's way: drum, cyclone, filter box. */
export type PlacedEquipment = { place: Place; element: Element; box: Box };

/** One length of pipe or hose as drawn; `points` is its middle line in flow direction. */
export type PlacedPipe = {
  place: Place;
  points: Point[];
  width: number;
  radius: number;
  hose: boolean;
  diameter_m: number;
};

/** Something small that sits on a pipe: a gate, a cone, a measured resistance; `across` is true on a level pipe. */
export type PlacedMark = {
  place: Place;
  kind: 'gate' | 'reducer' | 'fixed-resistance' | 'collar';
  at: Point;
  across: boolean;
  width: number;
};

export type BlowerSpot = { at: Point; scale: number; box: Box; eye: Point; outlet: Point };

export type WayOut = { tip: Point; way: 'up' | 'right'; wallX: number | null };

/** The finished drawing without any figure of the assessment on it. */
export type Sheet = {
  width: number;
  height: number;
  floorY: number;
  machines: PlacedMachine[];
  equipment: PlacedEquipment[];
  pipes: PlacedPipe[];
  marks: PlacedMark[];
  blower: BlowerSpot;
  wayOut: WayOut;
  /** sections that lead to no blower and so are not drawn */
  unplaced: string[];
};

export type PipeRef = { section: string; index: number; element: Element };

/** One line of pipe between two standing things, before it is cut into its pieces. */
export type Route = {
  section: string;
  points: Point[];
  refs: PipeRef[];
  gates: Section[];
  /** inside diameter where no element of the route names one */
  diameter_m: number;
  /** true for a main that begins where branches meet: a collar stands there */
  atJunction?: boolean;
};

/** A route still being drawn, and what its last point is: a spot on a main, or a port that looks up or to the side. */
export type OpenRoute = Route & { from: 'main' | 'up' | 'side' };

/** What has been drawn so far, and how far to the right the sheet is taken: on the floor, and above the machines by risers with their lettering. */
export type Drawing = {
  metrics: Metrics;
  floorY: number;
  machines: PlacedMachine[];
  equipment: PlacedEquipment[];
  routes: Route[];
  right: number;
  risersRight: number;
  namesRight: number;
};
