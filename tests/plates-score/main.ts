/**
 * Reads photos of nameplates and reading sheets with the program as it is and tells how well, by grade, kind and field, and
 * names everything claimed that is not so: `npm run plates`.
 *
 * --seed 1 --count 12   how many invented photos, and which (those of a seed are always the same); --held-back with the rest
 * --dir FOLDER          photos with their truth.json, instead of invented ones; --every N takes every Nth
 * --only easy|normal|hard, --kind motor-plate|blower-plate|readings-sheet, --id NAME
 * --base URL            a server that runs already; --out FILE keeps the answers
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { inventPlatePhoto } from '../../fixtures/generate/invent-plate-photo.ts';
import type { Difficulty } from '../../fixtures/generate/photo/light.ts';
import type { Kind, PlateTruth } from '../../fixtures/generate/plate/truth.ts';
import { startServer } from '../charts-score/server-beside.ts';
import { readPlate } from './plate-client.ts';
import { scorePlate, type PhotoScore, type PlateAnswer } from './score-photo.ts';
import { fieldTable, gradeTable, photoLine, silentLines } from './tables.ts';

const { values: chosen } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '12' },
    'held-back': { type: 'boolean', default: false },
    dir: { type: 'string' },
    every: { type: 'string', default: '1' },
    only: { type: 'string' },
    kind: { type: 'string' },
    id: { type: 'string' },
    base: { type: 'string' },
    out: { type: 'string' },
  },
});

const folder = mkdtempSync(join(tmpdir(), 'plates-'));
const server = chosen.base ? { base: chosen.base, stop: () => undefined } : await startServer();
try {
  const all: PhotoScore[] = [];
  const answers: Record<string, PlateAnswer | { refusal: string | null }> = {};
  for await (const { truth, file } of photos()) {
    const { answer, refusal, seconds } = await readPlate(server.base, file, truth.kind);
    const score = scorePlate(truth, answer, refusal, seconds);
    answers[truth.id] = answer ?? { refusal };
    all.push(score);
    console.log(photoLine(score));
    for (const line of silentLines(score)) console.log(line);
  }
  console.table(fieldTable(all));
  console.table(gradeTable(all));
  if (chosen.out) writeFileSync(chosen.out, JSON.stringify(answers));
} finally {
  server.stop();
  rmSync(folder, { recursive: true, force: true });
}

/** The photos asked for, one after the other. */
async function* photos(): AsyncGenerator<{ truth: PlateTruth; file: string }> {
  const wanted = (truth: PlateTruth) =>
    (!chosen.only || truth.difficulty === chosen.only) &&
    (!chosen.kind || truth.kind === chosen.kind) &&
    (!chosen.id || truth.id === chosen.id);
  if (chosen.dir) {
    const truths = (JSON.parse(readFileSync(join(chosen.dir, 'truth.json'), 'utf8')) as PlateTruth[]).filter(wanted);
    for (const truth of truths.filter((_, k) => k % Number(chosen.every) === 0))
      yield { truth, file: join(chosen.dir, truth.file) };
    return;
  }
  for (let k = 0; k < Number(chosen.count); k++) {
    const { jpeg, truth } = await inventPlatePhoto(Number(chosen.seed), k, {
      heldBack: chosen['held-back'],
      ...(chosen.only && { difficulty: chosen.only as Difficulty }),
      ...(chosen.kind && { kind: chosen.kind as Kind }),
    });
    const file = join(folder, truth.file);
    writeFileSync(file, jpeg);
    if (wanted(truth)) yield { truth, file };
  }
}
