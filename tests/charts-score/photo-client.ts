import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { ChartHints, ChartReading } from '../../src/chart/index.ts';

export type Answered = { reading: ChartReading | null; refusal: string | null; status: number; seconds: number };

/** Posts a photo and asks for its chart, as the page does. A refusal comes back as its sentence. */
export async function readPhoto(base: string, file: string, hints: Partial<ChartHints>): Promise<Answered> {
  const form = new FormData();
  form.set('photo', new Blob([readFileSync(file)]), basename(file));
  const sent = await fetch(`${base}/api/photos`, { method: 'POST', body: form });
  const { photoId, title, detail } = (await sent.json()) as { photoId?: string; title?: string; detail?: string };
  if (!photoId) return { reading: null, refusal: detail ?? title ?? 'no words', status: sent.status, seconds: 0 };
  const start = performance.now();
  const answer = await fetch(`${base}/api/photos/${photoId}/chart`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(hints),
  });
  const seconds = (performance.now() - start) / 1000;
  const body = (await answer.json()) as ChartReading & { title?: string; detail?: string };
  if (!answer.ok)
    return { reading: null, refusal: body.detail ?? body.title ?? 'no words', status: answer.status, seconds };
  return { reading: body, refusal: null, status: answer.status, seconds };
}
