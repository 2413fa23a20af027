import { QUANTITIES, trueValue, type Judged, type Quantity } from './judged.ts';

export const holds = (j: Judged, q: Quantity) => {
  const [low, high] = j.band[q];
  const truth = trueValue(j.truth)[q];
  return low <= truth && truth <= high;
};
export const relativeWidth = (j: Judged, q: Quantity) => (j.band[q][1] - j.band[q][0]) / trueValue(j.truth)[q];
export const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;

/** How far the truth is off the best guess, in standard deviations of the band, in ln. Mean 0 and spread 1 where the band is honest. */
export const offBy = (j: Judged, q: Quantity) =>
  Math.log(trueValue(j.truth)[q] / j.best[q]) / (Math.log(j.band[q][1] / j.band[q][0]) / (2 * 1.96));

export type Share = { held: number; of: number; width: number; meanOff: number; spreadOff: number };
export function share(results: readonly Judged[], q: Quantity): Share {
  const off = results.map((j) => offBy(j, q)).filter(Number.isFinite);
  const meanOff = off.reduce((s, v) => s + v, 0) / off.length;
  return {
    held: results.filter((j) => holds(j, q)).length,
    of: results.length,
    width: median(results.map((j) => relativeWidth(j, q))),
    meanOff,
    spreadOff: Math.sqrt(off.reduce((s, v) => s + (v - meanOff) ** 2, 0) / off.length),
  };
}

/** Flows the readings reached, shut-off among them; beyond them the band rests on the family. */
export function isBeyond({ find, truth }: Judged): boolean {
  if (find.tested === null) return false;
  // brought to the speed of the shop by the speeds of wheel then and now
  const flows = find.tested.truth.map((r) => r.flow_m3_s * (find.shopSpeed(truth) / r.running.speed_rpm));
  return truth.flow_m3_s > Math.max(...flows) || truth.flow_m3_s < Math.min(...flows);
}

export const GROUPS: readonly { name: string; of: (j: Judged) => boolean }[] = [
  { name: 'all', of: () => true },
  { name: 'inside', of: (j) => !isBeyond(j) },
  { name: 'beyond measured', of: isBeyond },
  ...(
    [
      'radial',
      'radial-tip',
      'backward-inclined',
      'backward-curved',
      'forward-curved',
      'axial',
      'through-flow-vacuum',
    ] as const
  ).map((family) => ({ name: family, of: (j: Judged) => j.find.family === family })),
  { name: 'area unknown', of: (j) => !j.find.outletAreaGiven },
  { name: 'family unknown', of: (j) => !j.find.familyGiven },
  { name: 'outlet side', of: (j) => j.find.tested?.rig.side === 'outlet' },
  { name: 'other pulley', of: (j) => 'testedWith' in (j.find.job.blowers[0]!.evidence as object[])[0]! },
  ...[1, 2, 3, 4].map((n) => ({ name: `${n} rows`, of: (j: Judged) => j.find.tested?.rows.length === n })),
  { name: '5+ rows', of: (j) => (j.find.tested?.rows.length ?? 0) >= 5 },
  ...[1, 3].map((n) => ({
    name: `amps, ${n} phases`,
    of: (j: Judged) =>
      j.find.electrical === 'amps' && (j.find.job.supply as { phases: number }).phases === n && j.find.tested !== null,
  })),
  ...(['amps', 'watts', 'none'] as const).map((e) => ({ name: e, of: (j: Judged) => j.find.electrical === e })),
  ...(
    ['orifice-cap', 'conical-inlet', 'bell-mouth', 'orifice-in-pipe', 'pitot-traverse', 'vane-traverse'] as const
  ).map((m) => ({ name: m, of: (j: Judged) => j.find.method === m })),
];

/** A table by group, for flow, pressure and power: coverage, median width, and mean and spread of `offBy`. */
export function report(results: readonly Judged[]): string {
  const percent = (x: number) => (100 * x).toFixed(1).padStart(6);
  const lines = GROUPS.flatMap(({ name, of }) => {
    const group = results.filter(of);
    if (group.length === 0) return [];
    const cells = QUANTITIES.map((q) => {
      const s = share(group, q);
      const off = `${s.meanOff.toFixed(2).padStart(5)} ±${s.spreadOff.toFixed(2)}`;
      return `${percent(s.held / s.of)} /${percent(s.width)} ${off}`;
    });
    return [`${name.padEnd(22)}${String(group.length).padStart(5)}  ${cells.join('   ')}`];
  });
  return ['group                  cases  flow held/width  off      pressure                    power', ...lines].join(
    '\n',
  );
}
