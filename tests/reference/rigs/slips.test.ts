import { describe, expect, it } from 'vitest';
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
const FIRST = 2_100_000;

/** Whether the bands of flow and pressure hold the truth of each find after a slip in one row of its test. */
const held = (kind: 'one-leg-row' | 'decimal'): boolean[] =>
  Array.from({ length: FINDS }, (_, i) => FIRST + i).flatMap((index) => {
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

describe('a slip in one row leaves the truth within the band', () => {
  const slips = { 'one leg': held('one-leg-row'), 'the decimal mark': held('decimal') };

  it.each(Object.entries(slips))('%s', (_, all) => {
    const share = all.filter(Boolean).length;
    expect(all.length).toBeGreaterThan(60);
    expect(heldAtLeast(share, all.length, 0.9), `${share} of ${all.length}`).toBe(true);
  });
});
