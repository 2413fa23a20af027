import { signal } from '@preact/signals';
import { photos, type ChartHints, type ChartReading, type ChartStep, type Problem } from '../api.ts';

/** What the reader says about the photo on the stage: the last answer stays until the next is there. */
export type Reader = {
  reading: ChartReading | null;
  problem: Problem | null;
  /** what it is doing now; null when it rests */
  step: ChartStep | null;
};

const NOTHING: Reader = { reading: null, problem: null, step: null };
export const reader = signal<Reader>(NOTHING);

let asked: AbortController | null = null;
let soon: ReturnType<typeof setTimeout> | undefined;
let of = '';

/** Asks for the newest hints only; what was asked before is given up. Without hints the last answer stays. */
export function askReader(photoId: string, hints: ChartHints | null): void {
  clearTimeout(soon);
  asked?.abort();
  if (photoId !== of) reader.value = NOTHING;
  of = photoId;
  if (!hints) {
    reader.value = { ...reader.value, step: null };
    return;
  }
  reader.value = { ...reader.value, step: 'frame' };
  soon = setTimeout(() => void ask(photoId, hints), SETTLE_ms);
}

/** Gives the reading up and forgets what was read. */
export function stopReader(): void {
  clearTimeout(soon);
  asked?.abort();
  reader.value = NOTHING;
}

/** A keyboard types several letters in this time; a tap does not feel it. */
const SETTLE_ms = 60;

async function ask(photoId: string, hints: ChartHints): Promise<void> {
  const mine = new AbortController();
  asked = mine;
  const onStep = (step: ChartStep): void => {
    if (!mine.signal.aborted) reader.value = { ...reader.value, step };
  };
  const answer = await photos.readChart(photoId, hints, { onStep, signal: mine.signal });
  if (mine.signal.aborted) return;
  reader.value = answer.ok
    ? { reading: answer.value, problem: null, step: null }
    : { reading: null, problem: answer.problem, step: null };
}
