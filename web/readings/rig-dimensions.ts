import type { Rig } from '../../src/readings/schema.ts';

/**
 * The sizes a rig is built to, as a drawing names them by letters. Places are shares of the test pipe's length, from its free
 * end to the blower; the drawing is not to scale.
 */
export type DimensionName =
  | 'toTap'
  | 'tapToBlower'
  | 'straightener'
  | 'before'
  | 'after'
  | 'coneOpening'
  | 'bellRadius'
  | 'throatTap'
  | 'plateTapBefore'
  | 'plateTapAfter'
  | 'hub'
  | 'head';

export type Dimension = {
  letter: string;
  name: DimensionName;
  /** what it is built to [m]: as told, else the usual; null where neither is known */
  size_m: number | null;
  /** the rule in multiples of the pipe's (D) or the throat's (d) inside; null where there is none */
  rule: { times: number; of: 'D' | 'd'; orMore: boolean } | null;
  /** as told it is less than the rule asks for */
  short: boolean;
  /** drawn along the pipe between these places; null: only named */
  span: readonly [from: number, to: number] | null;
};

/** Where things stand along the pipe in the drawing, from the free end. */
export const PLACES = { farTap: 0.78, nearTap: 0.13, plate: 0.5, measuring: 0.56, outletTap: 0.3 } as const;

/** A length of the rig: as told, else `usual` times the pipe; `least` is what the rule asks for. Places from, to. */
type Length = { usual: number | null; least: number | null; told: number | null | undefined; of?: 'D' | 'd' };

export const tapPlace = (rig: Rig): number => {
  if (rig.method === 'orifice-cap' && rig.side !== 'outlet' && rig.tap === 'near') return PLACES.nearTap;
  return rig.method === 'orifice-cap' && rig.side === 'outlet' ? PLACES.outletTap : PLACES.farTap;
};

/**
 * What to build, letter by letter. Least lengths: cap and tap after the job document (5 diameters, 0.4 near); traverse and plate
 * after guides for testing and balancing and ISO 5167-2 (8 and 2, 10 and 5 diameters); cone and bell after ISO 5801; straightener
 * and lengths on the outlet side by common practice.
 */
export function rigDimensions(rig: Rig): Dimension[] {
  const tap = tapPlace(rig);
  const outlet = rig.side === 'outlet';
  const named: Omit<Dimension, 'letter'>[] = [];
  const add = (name: DimensionName, span: Dimension['span'], length: Length): void => {
    named.push({ name, span, ...sized(rig, length) });
  };
  const tapToBlower = (least: number | null): void =>
    add('tapToBlower', [tap, 1], { usual: least ?? 1.5, least, told: rig.lengthTapToBlower_m });

  switch (rig.method) {
    case 'orifice-cap':
      if (outlet) {
        add('toTap', [0, tap], { usual: 1, least: 1, told: rig.lengthToTap_m });
        add('straightener', [0.45, 0.6], { usual: 2, least: null, told: null });
        tapToBlower(5);
      } else if (rig.tap === 'near') {
        add('toTap', [0, tap], { usual: 0.4, least: null, told: rig.lengthToTap_m });
        tapToBlower(5);
      } else {
        add('toTap', [0, tap], { usual: 8, least: 5, told: rig.lengthToTap_m });
        tapToBlower(null);
      }
      break;
    case 'conical-inlet':
      add('coneOpening', null, { usual: 2, least: null, told: null, of: 'd' });
      add('throatTap', outlet ? null : [0, 0.12], { usual: 0.5, least: null, told: null, of: 'd' });
      add('toTap', [outlet ? 0 : 0.12, tap], { usual: 8, least: 5, told: rig.lengthToTap_m });
      tapToBlower(null);
      break;
    case 'bell-mouth':
      add('bellRadius', null, { usual: 0.25, least: 0.25, told: null, of: 'd' });
      add('throatTap', outlet ? null : [0, 0.12], { usual: 0.5, least: null, told: null, of: 'd' });
      add('toTap', [outlet ? 0 : 0.12, tap], { usual: 8, least: 5, told: rig.lengthToTap_m });
      tapToBlower(null);
      break;
    case 'orifice-in-pipe':
      add('before', upstream(rig, PLACES.plate), { usual: 10, least: 10, told: rig.straightBefore_m });
      for (const one of plateTaps(rig)) named.push(one);
      add('after', downstream(rig, PLACES.plate, tap), { usual: 5, least: 5, told: rig.straightAfter_m });
      tapToBlower(null);
      break;
    case 'pitot-traverse':
    case 'vane-traverse':
      add('before', upstream(rig, PLACES.measuring), { usual: 8, least: 8, told: rig.straightBefore_m });
      add('after', downstream(rig, PLACES.measuring, tap), { usual: 2, least: 2, told: rig.straightAfter_m });
      tapToBlower(null);
      if (rig.hubDiameter_m != null) add('hub', null, { usual: null, least: null, told: rig.hubDiameter_m });
      if (rig.method === 'vane-traverse' && rig.anemometerDiameter_m != null)
        add('head', null, { usual: null, least: null, told: rig.anemometerDiameter_m });
      break;
    case 'bag-fill':
      add('toTap', [0, tap], { usual: 8, least: null, told: rig.lengthToTap_m });
      tapToBlower(null);
      break;
  }
  return named.map((dimension, i) => ({ ...dimension, letter: 'abcefg'[i] ?? '' }));
}

/** The air comes from the free end on the inlet side, from the blower on the outlet side. */
const upstream = ({ side }: Rig, at: number): [number, number] => (side === 'outlet' ? [at, 1] : [0, at]);
const downstream = ({ side }: Rig, at: number, tap: number): [number, number] =>
  side === 'outlet' ? [0, at] : [at, tap];

function sized(rig: Rig, { usual, least, told, of = 'D' }: Length): Pick<Dimension, 'size_m' | 'rule' | 'short'> {
  const base = (of === 'D' ? widthOf(rig) : rig.throatDiameter_m) ?? null;
  const times = told == null ? usual : least;
  return {
    size_m: told ?? (usual === null || base === null ? null : usual * base),
    rule: times === null ? null : { times, of, orMore: least !== null && times === least },
    short: told != null && least !== null && base !== null && told < least * base * (1 - 1e-9),
  };
}

/** Inside of a round pipe, or 4 times the area over the girth of a channel. */
function widthOf({ pipeDiameter_m, width_m, height_m }: Rig): number | null {
  if (pipeDiameter_m != null) return pipeDiameter_m;
  return width_m != null && height_m != null ? (2 * width_m * height_m) / (width_m + height_m) : null;
}

/** Places of the plate's taps before and after it, in pipe diameters or metres. Source: ISO 5167-2, 5.2. */
function plateTaps(rig: Rig): Omit<Dimension, 'letter'>[] {
  const tap = (name: DimensionName, size: { times: number } | { size_m: number }): Omit<Dimension, 'letter'> => {
    const times = 'times' in size ? size.times : null;
    const base = widthOf(rig);
    return {
      name,
      span: null,
      size_m: 'size_m' in size ? size.size_m : base === null ? null : size.times * base,
      rule: times === null ? null : { times, of: 'D', orMore: false },
      short: false,
    };
  };
  const FLANGE_m = 0.0254;
  switch (rig.tappings ?? 'corner') {
    case 'corner':
      return [tap('plateTapBefore', { size_m: 0 }), tap('plateTapAfter', { size_m: 0 })];
    case 'flange':
      return [tap('plateTapBefore', { size_m: FLANGE_m }), tap('plateTapAfter', { size_m: FLANGE_m })];
    case 'D-and-half-D':
      return [tap('plateTapBefore', { times: 1 }), tap('plateTapAfter', { times: 0.5 })];
  }
}
