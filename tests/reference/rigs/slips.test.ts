import { expect, it } from 'vitest';
import { checkJob } from '../../../src/index.ts';
import { judge } from '../../../src/judge.ts';
import { heldAtLeast } from './by-chance.ts';
import { invent } from './invent.ts';
import { randomFrom } from './random.ts';
import { withBlunder } from './seeded-blunders.ts';
import { wishesIn } from './worlds.ts';

/** Enough possible truths for a band. */
const DRAWS = 200;
const FINDS = 45;

/** Whether the bands of flow and pressure hold the truth of each find after a slip in one row of its test. */
function held(kind: 'one-leg-row' | 'decimal', first: number): boolean[] {
  return Array.from({ length: FINDS }, (_, i) => first + i).flatMap((index) => {
    const random = randomFrom(1, index);
    const find = invent(random, { ...wishesIn('plain', random), rows: [5, 8] });
    const truth = find.truePoint(['m1']);
    if (truth === null || (find.tested?.rows.length ?? 0) < 5) return [];
    const slipped = withBlunder(find, kind, randomFrom(2, index));
    const job = slipped && checkJob(JSON.parse(JSON.stringify(slipped.job)));
    const point = job?.ok ? judge(job.value, DRAWS).assessment.cases[0]!.operatingPoint : null;
    if (point === null) return [];
    const within = ([low, high]: readonly [number, number], value: number) => low <= value && value <= high;
    const { flow_m3_s, totalPressure_Pa } = point.interval95;
    return [within(flow_m3_s, truth.flow_m3_s), within(totalPressure_Pa, truth.total_Pa)];
  });
}

it.each(['one-leg-row', 'decimal'] as const)('a slip in one row leaves the truth within the band: %s', (kind) => {
  const all = held(kind, 2_100_000);
  const n = all.length;
  expect(n).toBeGreaterThan(60);
  const share = all.filter(Boolean).length;
  expect(heldAtLeast(share, n, 0.9), `${share} of ${n}`).toBe(true);
});
