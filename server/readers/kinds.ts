import { z } from 'zod';
import { ChartHints } from '../../src/chart/index.ts';
import type { Result } from '../../src/issues/result.ts';
import type { Photo } from '../../src/picture/raster.ts';
import { readPlateIn } from '../../src/plate/index.ts';
import { readSheetIn } from '../../src/readings-sheet/index.ts';
import type { WordReader } from '../../src/words/word-reader.ts';
import { readChart } from './chart.ts';
import { inTime, type Patience } from './in-time.ts';

/** @param onStep hears each step as it is begun */
export type ReadingAids = { readonly words: WordReader; readonly onStep: (step: string) => void };

/** One kind of thing to be read from a photo: what may be told about it beforehand, and how it is read. */
export type Reader = {
  readonly hints: z.ZodType;
  /** @param hints as the schema above left them */
  readonly read: (photo: Photo, hints: unknown, aids: ReadingAids) => Promise<Result<unknown>>;
  /** for whoever waited for nothing */
  readonly tooSlow: string;
};

/** Nothing can be told about it beforehand: the body is `{}`. */
const NoHints = z.strictObject({});

/** Names of columns matter most; figures have another reader too, and words are only its second witness. */
const SHEET_PATIENCE: Patience = { text: 12_000, glyph: 12_000, number: 8_000 };

/** `POST /api/photos/:photoId/<name>`: the issues of a reading are a 400 where hints are not understood, else a 422. */
export const READERS = {
  chart: {
    hints: ChartHints,
    read: (photo, hints, aids) => readChart(photo, hints as ChartHints, aids),
    tooSlow: 'This chart takes too long to read; mark its corners closer, or send a smaller photo.',
  },
  nameplate: {
    hints: NoHints,
    read: (photo, _, { words, onStep }) => readPlateIn(photo, words, { onStep }),
    tooSlow: 'This plate takes too long to read; take the photo nearer, or type in what stands there.',
  },
  'readings-sheet': {
    hints: NoHints,
    read: (photo, _, { words, onStep }) => readSheetIn(photo, inTime(words, SHEET_PATIENCE), { onStep }),
    tooSlow: 'This sheet takes too long to read; take the photo nearer, or type in what stands there.',
  },
} satisfies Record<string, Reader>;

export type ReadingKind = keyof typeof READERS;
