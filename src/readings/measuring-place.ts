import { pointer, type Issue, type Warning } from '../issues/result.ts';
import type { Bench } from './bench.ts';
import type { Rig } from './schema.ts';

/** Area the air passes where it is measured [m2]: the pipe without its hub. Source: definition (annulus). */
export function measuringArea(bench: Bench): number {
  const hub_m = bench.rig.hubDiameter_m ?? 0;
  return bench.pipe.area_m2 - (Math.PI / 4) * hub_m ** 2;
}

/** Narrowest way across the measuring place [m]; null where it is not told. */
export function widthOf({ pipeDiameter_m, width_m, height_m }: Rig): number | null {
  if (pipeDiameter_m != null) return pipeDiameter_m;
  return width_m != null && height_m != null ? Math.min(width_m, height_m) : null;
}

/** What stands inside the pipe and does not go in. `path` is the pointer of the rig. */
export function impossibleInside(
  rig: Rig,
  field: 'hubDiameter_m' | 'anemometerDiameter_m',
  name: string,
  path: string,
): Issue[] {
  const size = rig[field];
  const width = widthOf(rig);
  if (size == null || width === null || size < width) return [];
  const message = `${name} of ${size} m does not go into a pipe of ${width} m: look at both sizes.`;
  return [{ code: 'contradiction', path: path + pointer(field), message }];
}

/** A head wider than this share of the pipe blocks the air it is to measure [-]. Source: common practice of anemometer guides. */
const LARGEST_HEAD = 0.2;

/** Says so where the anemometer's head is large for its pipe. `path` is the pointer of the rig. */
export function largeHead(rig: Rig, path: string): Warning[] {
  const width = widthOf(rig);
  if (rig.anemometerDiameter_m == null || width === null || rig.anemometerDiameter_m <= LARGEST_HEAD * width) return [];
  const text = `The anemometer's head is ${Math.round((100 * rig.anemometerDiameter_m) / width)} % of the pipe's width: it blocks the air it measures. Measure at a mouth or box five times as wide.`;
  return [{ code: 'anemometer-too-big', path: path + pointer('anemometerDiameter_m'), text }];
}
