/**
 * Reads photos of charts with the program as it is and tells how well, by grade and by step: `npm run charts`.
 *
 * --seed 1 --count 12   how many invented photos, and which (those of a seed are always the same)
 * --dir FOLDER          photos with their truth, instead of invented ones; --every N takes every Nth
 * --only easy|normal|hard, --manner NAME, --longest PIXELS
 * --hinted              corners, scales and taps are told, as a person would mark them
 * --nothing             photos without a chart: each must be declined
 * --base URL            a server that runs already; --out FOLDER keeps photos and answers
 */
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { inventNothing, inventPhoto } from '../../fixtures/generate/invent-photo.ts';
import type { Difficulty } from '../../fixtures/generate/photo/light.ts';
import type { ChartTruth } from '../../fixtures/generate/photo/truth.ts';
import { errorTable } from './error-estimates.ts';
import { hintedPart, hintsFor } from './hints.ts';
import { readPhoto } from './photo-client.ts';
import { scorePhoto } from './score-photo.ts';
import { scoreSteps } from './score-steps.ts';
import { startServer } from './server-beside.ts';
import { gradeTable, photoLine, stepTable, type Scored } from './tables.ts';

const { values: chosen } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '12' },
    dir: { type: 'string' },
    every: { type: 'string', default: '1' },
    only: { type: 'string' },
    manner: { type: 'string' },
    longest: { type: 'string' },
    hinted: { type: 'boolean', default: false },
    nothing: { type: 'boolean', default: false },
    base: { type: 'string' },
    out: { type: 'string' },
  },
});

const folder = chosen.out ?? mkdtempSync(join(tmpdir(), 'charts-'));
mkdirSync(folder, { recursive: true });
const server = chosen.base ? { base: chosen.base, stop: () => undefined } : await startServer();
try {
  await (chosen.nothing ? declineAll() : scoreAll());
} finally {
  server.stop();
  if (!chosen.out) rmSync(folder, { recursive: true, force: true });
}

/** The photos asked for, one after the other. */
async function* photos(): AsyncGenerator<{ truth: ChartTruth; file: string }> {
  const wanted = (truth: ChartTruth) => !chosen.only || truth.difficulty === chosen.only;
  if (chosen.dir) {
    const names = readdirSync(chosen.dir)
      .filter((name) => name.endsWith('.json'))
      .sort();
    for (const name of names.filter((_, k) => k % Number(chosen.every) === 0)) {
      const truth = JSON.parse(readFileSync(join(chosen.dir, name), 'utf8')) as ChartTruth;
      if (truth.chart?.curves && wanted(truth)) yield { truth, file: join(chosen.dir, truth.file) };
    }
    return;
  }
  for (let k = 0; k < Number(chosen.count); k++) {
    const { jpeg, truth } = await inventPhoto(Number(chosen.seed), k, {
      ...(chosen.only && { difficulty: chosen.only as Difficulty }),
      ...(chosen.manner && { manner: chosen.manner }),
      ...(chosen.longest && { longest: Number(chosen.longest) }),
    });
    const file = join(folder, truth.file);
    writeFileSync(file, jpeg);
    writeFileSync(join(folder, `${truth.id}.truth.json`), JSON.stringify(truth));
    yield { truth, file };
  }
}

async function scoreAll(): Promise<void> {
  const all: Scored[] = [];
  for await (const { truth: whole, file } of photos()) {
    const truth = chosen.hinted ? hintedPart(whole) : whole;
    const { reading, refusal, status, seconds } = await readPhoto(
      server.base,
      file,
      chosen.hinted ? hintsFor(truth) : {},
    );
    const score = scorePhoto(truth, reading, refusal, status === 422, seconds);
    const scored = { ...score, steps: scoreSteps(score) };
    all.push(scored);
    if (chosen.out) writeFileSync(join(folder, `${truth.id}.answer.json`), JSON.stringify(reading ?? { refusal }));
    console.log(photoLine(scored));
  }
  console.table(gradeTable(all));
  console.log('Step by step, each only where the step before it was right:');
  console.table(stepTable(all));
  console.log('The error curves state against the error they have:');
  console.table(errorTable(all));
}

async function declineAll(): Promise<void> {
  let declined = 0;
  for (let k = 0; k < Number(chosen.count); k++) {
    const { jpeg, id } = await inventNothing(
      Number(chosen.seed),
      k,
      chosen.longest ? Number(chosen.longest) : undefined,
    );
    const file = join(folder, `${id}.jpg`);
    writeFileSync(file, jpeg);
    const { reading, refusal, status, seconds } = await readPhoto(server.base, file, {});
    if (status === 422) declined++;
    const said =
      refusal ??
      `READ AS A CHART: ${reading!.curves.length} curves, ${reading!.confidence.needsReview ? 'flagged' : 'without a flag'}`;
    console.log(`${id}  ${status}  ${seconds.toFixed(1)}s  ${said}`);
  }
  console.log(`${declined} of ${chosen.count} declined`);
}
