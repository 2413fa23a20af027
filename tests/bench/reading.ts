import { decodePhoto } from '../../server/image/decode.ts';
import { createWordWorkers } from '../../server/words/word-workers.ts';
import type { Photo } from '../../src/picture/raster.ts';
import type { WordReader } from '../../src/words/word-reader.ts';

const READS = 5;

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

export type Reading = {
  readonly title: string;
  readonly file: string;
  /** @param onStep to be told the name of each step as it begins; throws where the photo is not read */
  readonly read: (photo: Photo, words: WordReader, onStep: (step: string) => void) => Promise<void>;
};

/**
 * Prints where the time of reading a photo with nothing typed goes, step by step, each beside decoding the same photo in
 * the same run: that is a library's work, and tells how fast the machine is just then.
 */
export async function benchReading({ title, file, read }: Reading): Promise<void> {
  const words = createWordWorkers();
  await words.warmUp();
  const taken = new Map<string, number[]>();
  const add = (name: string, time: number) => taken.set(name, [...(taken.get(name) ?? []), time]);
  let [crops, megapixels] = [0, 0];
  // the first read makes everything warm
  for (let round = 0; round <= READS; round++) {
    crops = 0;
    const start = performance.now();
    const photo = await decodePhoto(file);
    const marks: [string, number][] = [];
    const decoded = performance.now();
    await read(
      photo,
      (some, want) => {
        crops += some.length;
        return words.read(some, want);
      },
      (step) => void marks.push([step, performance.now()]),
    );
    const end = performance.now();
    megapixels = (photo.full.width * photo.full.height) / 1e6;
    if (round === 0) continue;
    add('decoding', decoded - start);
    marks.forEach(([step, at], i) => add(step, (marks[i + 1]?.[1] ?? end) - at));
    add('whole read', end - start);
  }
  words.close();
  const reference = median(taken.get('decoding')!);
  console.log(`\n${title}, nothing typed: ${megapixels.toFixed(1)} megapixels, ${crops} crops, median of ${READS}`);
  console.log(`${'ms'.padStart(8)}${'ratio'.padStart(8)}`);
  for (const [name, times] of taken) {
    const time = median(times);
    console.log(`${time.toFixed(0).padStart(8)}${(time / reference).toFixed(1).padStart(8)}  ${name}`);
  }
}
