import { writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inventPhoto } from '../../fixtures/generate/invent-photo.ts';

import { ChartHints } from '../../src/chart/index.ts';
import { hintedPart, hintsFor } from '../charts-score/hints.ts';
import { scorePhoto } from '../charts-score/score-photo.ts';
import { readChartFile } from './read-chart-file.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chart-errors-'));
});
afterAll(() => rm(folder, { recursive: true }));

const PHOTOS = 9;

/** Stated and real error of every curve without a doubt about it, on small photos of all grades. */
async function errors(seed: number): Promise<{ stated: number; real: number }[]> {
  const out: { stated: number; real: number }[] = [];
  for (let k = 0; k < PHOTOS; k++) {
    const { jpeg, truth: whole } = await inventPhoto(seed, k, { longest: 1200 });
    const truth = hintedPart(whole);
    const file = join(folder, truth.file);
    writeFileSync(file, jpeg);
    const read = await readChartFile(file, ChartHints.parse(hintsFor(truth)), () => Promise.resolve([]));
    if (!read.ok || read.value.confidence.needsReview) continue;
    for (const { read: curve, closeness } of scorePhoto(truth, read.value, null, false, 0).curves)
      if (curve && closeness) out.push({ stated: curve.expectedError, real: closeness.rms });
  }
  return out;
}

test('the error stated of a curve is the error it has, neither boasting nor shy', async () => {
  const all = await errors(2024);
  const ratios = all.map(({ stated, real }) => real / stated).sort((a, b) => a - b);
  const share = (limit: number) => ratios.filter((r) => r <= limit).length / ratios.length;
  expect(all.length).toBeGreaterThan(8);
  // one standard uncertainty: most lie within it, nearly all within three
  expect(share(1)).toBeGreaterThan(0.5);
  expect(share(3)).toBeGreaterThan(0.9);
  expect(ratios[Math.floor(ratios.length / 2)]).toBeGreaterThan(0.2);
}, 240_000);
