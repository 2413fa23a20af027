/** Places on the ruler of motor load, in percent of its width. */
export type LoadRuler = { end: number; place: (load: number) => number };

/** The ruler always shows the plate with room beyond it, where overload lies. Loads past its end stop at its edge. */
const LEAST_END = 1.3;
const MOST_END = 2.5;

export function loadRuler(loads: readonly (number | null | undefined)[]): LoadRuler {
  const most = Math.max(0, ...loads.map((load) => load ?? 0));
  const end = Math.min(Math.max(LEAST_END, 1.05 * most), MOST_END);
  return { end, place: (load) => Math.min(100, Math.max(0, (100 * load) / end)) };
}
