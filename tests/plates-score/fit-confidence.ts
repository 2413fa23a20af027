/**
 * Fits how far a field of a plate is to be trusted (`src/plate/confidence.ts`) on photos with truth, and shows how true the chances are:
 * `node --import tsx tests/plates-score/fit-confidence.ts FOLDER...`, folders as `make-plates.ts` makes them.
 * What was read is kept beside each photo as NAME.writing.json and used again.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { lusolve } from 'mathjs';
import type { PlateTruth } from '../../fixtures/generate/plate/truth.ts';
import { recentPhoto } from '../../server/image/recent-photos.ts';
import { createWordWorkers } from '../../server/words/word-workers.ts';
import { confidenceFrom, groundsOf } from '../../src/plate/confidence.ts';
import { weighed } from '../../src/plate/read-plate.ts';
import { readWriting, type Writing } from '../../src/writing/index.ts';
import { PLATE_FIELDS, sameValue } from './judge.ts';

/** A field that was read: its grounds with a one before them, and whether it is right. */
type Row = { readonly grounds: readonly number[]; readonly isRight: boolean; readonly confidence: number };

const words = createWordWorkers();
const rows: Row[] = [];
for (const folder of process.argv.slice(2))
  for (const truth of JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8')) as PlateTruth[])
    if (truth.kind !== 'readings-sheet') rows.push(...rowsOf(truth, await writingOf(join(folder, truth.file))));

console.table(calibration());
console.log(
  `${rows.length} fields; constant and weights:`,
  fitted()
    .map((v) => v.toFixed(2))
    .join(' '),
);
process.exit(0);

async function writingOf(file: string): Promise<Writing | null> {
  const kept = `${file}.writing.json`;
  if (!existsSync(kept)) writeFileSync(kept, JSON.stringify(await readWriting(await recentPhoto(file), words.read)));
  const writing = JSON.parse(readFileSync(kept, 'utf8')) as Writing | null;
  return writing && { ...writing, toPhoto: (x, y) => [x, y] };
}

function rowsOf(truth: PlateTruth, writing: Writing | null): Row[] {
  if (!writing) return [];
  return weighed(writing)
    .told.opinions.filter(({ field }) => PLATE_FIELDS.includes(field))
    .map((opinion) => {
      const grounds = groundsOf(opinion);
      const parts = [...new Set(opinion.choices[0]!.value.parts)];
      const printed = truth.fields[opinion.field];
      const isRight = printed !== undefined && sameValue(opinion.field, printed, parts.length > 1 ? parts : parts[0]);
      return { grounds: [1, ...grounds], isRight, confidence: confidenceFrom(grounds) };
    });
}

function calibration() {
  const borders = [0, 0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 0.98, 1];
  return borders.slice(1).map((below, i) => {
    const own = rows.filter(({ confidence }) => confidence >= borders[i]! && confidence < below);
    const right = own.filter(({ isRight }) => isRight).length;
    return { from: borders[i], fields: own.length, right: own.length ? (right / own.length).toFixed(3) : '–' };
  });
}

/** Logistic regression with a ridge, by Newton's steps. Source: D. R. Cox, J. R. Stat. Soc. B 20 (1958) 215. */
function fitted(ridge = 0.3, steps = 30): number[] {
  let weights = rows[0]!.grounds.map(() => 0);
  for (let step = 0; step < steps; step++) {
    const chances = rows.map(({ grounds }) => 1 / (1 + Math.exp(-grounds.reduce((s, g, k) => s + g * weights[k]!, 0))));
    const slope = weights.map((w, a) =>
      rows.reduce(
        (s, { grounds, isRight }, i) => s + (Number(isRight) - chances[i]!) * grounds[a]!,
        a > 0 ? -ridge * w : 0,
      ),
    );
    const curvature = weights.map((_, a) =>
      weights.map((__, b) =>
        rows.reduce(
          (s, { grounds }, i) => s + chances[i]! * (1 - chances[i]!) * grounds[a]! * grounds[b]!,
          a === b && a > 0 ? ridge : 0,
        ),
      ),
    );
    const change = (lusolve(curvature, slope) as number[][]).map(([v]) => v!);
    weights = weights.map((w, k) => w + change[k]!);
  }
  return weights;
}
