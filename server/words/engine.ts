import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { createWorker, OEM, type Page, type Worker } from 'tesseract.js';
import type { Glyph, WordCrop, WordKind, WordRead } from '../../src/words/word-reader.ts';
import { greyImage } from './grey-image.ts';

/** Where the letters' shapes lie on this machine; nothing is fetched. */
const LANGUAGE_FOLDER = join(
  dirname(createRequire(import.meta.url).resolve('@tesseract.js-data/eng/package.json')),
  '4.0.0_best_int',
);

/** Dictionaries would turn numbers into words. */
const NO_DICTIONARIES = {
  load_system_dawg: '0',
  load_freq_dawg: '0',
  load_unambig_dawg: '0',
  load_punc_dawg: '0',
  load_number_dawg: '0',
  load_bigram_dawg: '0',
};

/**
 * Every parameter is set for every crop: the engine keeps what it was last told, and a list of digits left behind
 * would ruin the next line of text. A single character is looked at as such; modes meant for one word invent digits.
 */
const PARAMETERS: Record<WordKind, Record<string, string>> = {
  number: { tessedit_pageseg_mode: '7', tessedit_char_whitelist: "0123456789.,-' ", user_defined_dpi: '150' },
  text: { tessedit_pageseg_mode: '7', tessedit_char_whitelist: '', user_defined_dpi: '150' },
  glyph: { tessedit_pageseg_mode: '10', tessedit_char_whitelist: '', user_defined_dpi: '150' },
};

const NOTHING: WordRead = { text: '', confidence: 0, glyphs: [] };

export type Engine = {
  read(crop: WordCrop, want: WordKind): Promise<WordRead>;
  /** ends it at once, whatever it is doing */
  end(): void;
};

/** Starts one engine in a thread of its own (0.2 s). Rejects where its language data can't be loaded. */
export async function startEngine(): Promise<Engine> {
  const worker: Worker = await createWorker(
    'eng',
    OEM.LSTM_ONLY,
    // without an error handler a failed crop would end the whole process
    { langPath: LANGUAGE_FOLDER, gzip: true, cacheMethod: 'none', errorHandler: () => undefined },
    NO_DICTIONARIES,
  );
  // a thread that waits for work is no reason to stay alive
  threadOf(worker)?.unref?.();
  return {
    async read(crop, want) {
      const { data } = await worker.recognize(greyImage(crop), PARAMETERS[want] as object, {
        text: true,
        blocks: true,
      });
      return readOf(data);
    },
    end: () => void worker.terminate(),
  };
}

const threadOf = (worker: Worker) => (worker as unknown as { worker?: { unref?(): void } }).worker;

function readOf(page: Page): WordRead {
  const words = (page.blocks ?? []).flatMap((b) => b.paragraphs.flatMap((p) => p.lines.flatMap((l) => l.words)));
  const glyphs: Glyph[] = words.flatMap((w) =>
    w.symbols.map((s) => ({
      text: s.text,
      confidence: s.confidence / 100,
      x0: s.bbox.x0,
      x1: s.bbox.x1,
      y0: s.bbox.y0,
      y1: s.bbox.y1,
    })),
  );
  const text = page.text.trim();
  if (!text || !glyphs.length) return NOTHING;
  // the engine's own figure for the page is rounded and counts words, not characters
  const letters = words.reduce((n, w) => n + w.text.length, 0);
  const confidence = words.reduce((s, w) => s + w.confidence * w.text.length, 0) / (100 * letters);
  return { text, confidence, glyphs };
}
