import { signal } from '@preact/signals';
import { photos, type ChartHints, type ChartReading, type Problem } from '../api.ts';

/** What the reader says about the photo on the stage: the last answer stays until the next is there. */
export type Reader = {
  reading: ChartReading | null;
  problem: Problem | null;
  busy: boolean;
  /** the hints the answer belongs to; another set of hints means it is out of date */
  of: ChartHints | null;
};

const NOTHING: Reader = { reading: null, problem: null, busy: false, of: null };
export const reader = signal<Reader>(NOTHING);

let asked: AbortController | null = null;
let soon: ReturnType<typeof setTimeout> | undefined;

/** Asks for the newest hints only; what was asked before is given up. */
export function askReader(photoId: string, hints: ChartHints | null): void {
  clearTimeout(soon);
  asked?.abort();
  if (!hints) {
    reader.value = NOTHING;
    return;
  }
  reader.value = { ...reader.value, busy: true };
  soon = setTimeout(() => void ask(photoId, hints), SETTLE_ms);
}

/** A keyboard types several letters in this time; a tap does not feel it. */
const SETTLE_ms = 60;

async function ask(photoId: string, hints: ChartHints): Promise<void> {
  const mine = new AbortController();
  asked = mine;
  const answer = await photos.readChart(photoId, hints, mine.signal);
  if (mine.signal.aborted) return;
  reader.value = answer.ok
    ? { reading: answer.value, problem: null, busy: false, of: hints }
    : { reading: null, problem: answer.problem, busy: false, of: hints };
}
