import { fileURLToPath } from 'node:url';
import { decodePhoto } from '../../server/image/decode.ts';
import { createWordWorkers } from '../../server/words/word-workers.ts';
import { createMemory, readChartIn, type ChartStep } from '../../src/chart/index.ts';
import { findFrames } from '../../src/chart/page/find-frames.ts';

const PHOTO = fileURLToPath(new URL('../../fixtures/charts/demo.jpg', import.meta.url));
const READS = 5;

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

/**
 * Prints where the time of reading a chart with nothing typed goes, step by step, each beside decoding the same photo in
 * the same run: that is a library's work, and tells how fast the machine is just then.
 */
export async function benchChart(): Promise<void> {
  const words = createWordWorkers();
  await words.warmUp();
  const taken: Record<string, number[]> = { decoding: [], frame: [], labels: [], curves: [], 'whole read': [] };
  let crops = 0;
  let size = '';
  // the first read makes everything warm
  for (let round = 0; round <= READS; round++) {
    const began: Partial<Record<ChartStep, number>> = {};
    crops = 0;
    const start = performance.now();
    const photo = await decodePhoto(PHOTO);
    const decoded = performance.now();
    const read = await readChartIn(
      photo,
      {},
      {
        memory: createMemory(24),
        words: (some, want) => {
          crops += some.length;
          return words.read(some, want);
        },
        onStep: (step) => void (began[step] = performance.now()),
      },
    );
    const end = performance.now();
    if (!read.ok) throw new Error(`the demo chart is not read: ${read.issues[0]?.message}`);
    const frames = performance.now();
    findFrames(photo);
    const frame = performance.now() - frames;
    size = `${((photo.full.width * photo.full.height) / 1e6).toFixed(1)} megapixels`;
    if (round === 0) continue;
    taken['decoding']!.push(decoded - start);
    taken['frame']!.push(frame);
    taken['labels']!.push(began.curves! - decoded - frame);
    taken['curves']!.push(end - began.curves!);
    taken['whole read']!.push(end - start);
  }
  words.close();
  const reference = median(taken['decoding']!);
  console.log(
    `\nReading a chart, nothing typed: ${size}, ${crops} words read, median of ${READS} (aim: 4,000 ms in all)`,
  );
  console.log(`${'ms'.padStart(8)}${'ratio'.padStart(8)}`);
  for (const [name, times] of Object.entries(taken)) {
    const time = median(times);
    console.log(`${time.toFixed(0).padStart(8)}${(time / reference).toFixed(1).padStart(8)}  ${name}`);
  }
}
