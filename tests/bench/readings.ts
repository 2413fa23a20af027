import { fileURLToPath } from 'node:url';
import { createMemory, readChartIn } from '../../src/chart/index.ts';
import type { Result } from '../../src/issues/result.ts';
import { readPlateIn } from '../../src/plate/index.ts';
import { readSheetIn } from '../../src/readings-sheet/index.ts';
import type { Reading } from './reading.ts';

const fixture = (name: string): string => fileURLToPath(new URL(`../../fixtures/${name}`, import.meta.url));

function done(read: Result<unknown>): void {
  if (!read.ok) throw new Error(`the demo's photo is not read: ${read.issues[0]?.message}`);
}

/** What is read from photos, each with the demo's own; the aims are for a warm program on two cores. */
export const READINGS: readonly Reading[] = [
  {
    title: 'Reading a chart (aim: 4,000 ms in all)',
    file: fixture('charts/demo.jpg'),
    read: async (photo, words, onStep) =>
      done(await readChartIn(photo, {}, { words, onStep, memory: createMemory(24) })),
  },
  {
    title: 'Reading a nameplate (aim: 5,000 ms in all)',
    file: fixture('plates/motor.jpg'),
    read: async (photo, words, onStep) => done(await readPlateIn(photo, words, { onStep })),
  },
  {
    title: 'Reading a sheet of readings (aim: 5,000 ms in all)',
    file: fixture('plates/sheet.jpg'),
    read: async (photo, words, onStep) => done(await readSheetIn(photo, words, { onStep })),
  },
];
