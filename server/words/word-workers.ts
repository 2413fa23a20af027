import type { WordCrop, WordKind, WordRead, WordReader } from '../../src/words/word-reader.ts';
import { startEngine, type Engine } from './engine.ts';

/** One engine a core of the machines this runs on; each takes about 60 MB. */
const WORKERS = 2;
/** A line of text takes about 10 ms; on one that takes this long the engine hangs. */
const TIME_LIMIT_MS = 5000;
const NOTHING: WordRead = { text: '', confidence: 0, glyphs: [] };

export type WordWorkers = {
  read: WordReader;
  /** starts the engines before anybody waits for them */
  warmUp(): Promise<void>;
  close(): void;
};

/**
 * Reads words with a fixed number of engines, started when first wanted and kept warm. Crops are shared out among them
 * one by one. An engine that hangs on a crop, or breaks, is ended and another started in its place; that crop counts as
 * unreadable.
 * @param start starts one engine
 */
export function createWordWorkers(
  start: () => Promise<Engine> = startEngine,
  workers: number = WORKERS,
  timeLimit_ms: number = TIME_LIMIT_MS,
): WordWorkers {
  const seats: (Promise<Engine> | null)[] = Array.from({ length: workers }, () => null);
  let last: Promise<unknown> = Promise.resolve();

  function engineAt(seat: number): Promise<Engine> {
    const engine = (seats[seat] ??= start());
    // one that could not start is not kept: the next call tries again
    engine.catch(() => {
      if (seats[seat] === engine) seats[seat] = null;
    });
    return engine;
  }

  async function readOne(seat: number, crop: WordCrop, want: WordKind): Promise<WordRead> {
    const engine = await engineAt(seat);
    try {
      return await within(timeLimit_ms, engine.read(crop, want));
    } catch {
      engine.end();
      seats[seat] = null;
      return NOTHING;
    }
  }

  async function readAll(crops: readonly WordCrop[], want: WordKind): Promise<WordRead[]> {
    const reads: WordRead[] = Array.from({ length: crops.length }, () => NOTHING);
    let next = 0;
    const work = async (seat: number) => {
      while (next < crops.length) {
        const i = next++;
        reads[i] = await readOne(seat, crops[i]!, want);
      }
    };
    await Promise.all(seats.slice(0, crops.length).map((_, seat) => work(seat)));
    return reads;
  }

  return {
    read(crops, want) {
      // an engine reads one crop at a time: calls wait for each other
      const turn = last.then(() => readAll(crops, want));
      last = turn.catch(() => undefined);
      return turn;
    },
    warmUp: async () => void (await Promise.all(seats.map((_, seat) => engineAt(seat)))),
    close() {
      seats.forEach((engine, seat) => {
        engine?.then((e) => e.end()).catch(() => undefined);
        seats[seat] = null;
      });
    },
  };
}

/** Rejects when the time is over. */
function within<T>(limit_ms: number, work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('the reader took too long')), limit_ms);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
