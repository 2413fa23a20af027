import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Kind } from '../../fixtures/generate/plate/truth.ts';
import type { PlateAnswer } from './score-photo.ts';

export type Answered = { answer: PlateAnswer | null; refusal: string | null; seconds: number };

/** Posts a photo and asks for its plate or its sheet, as the page does. A refusal comes back as its sentence. */
export async function readPlate(base: string, file: string, kind: Kind): Promise<Answered> {
  const form = new FormData();
  form.set('photo', new Blob([readFileSync(file)]), basename(file));
  const sent = await fetch(`${base}/api/photos`, { method: 'POST', body: form });
  const { photoId, title, detail } = (await sent.json()) as { photoId?: string; title?: string; detail?: string };
  if (!photoId) return { answer: null, refusal: detail ?? title ?? 'no words', seconds: 0 };
  const start = performance.now();
  const reply = await fetch(`${base}/api/photos/${photoId}/${kind === 'readings-sheet' ? kind : 'nameplate'}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  const seconds = (performance.now() - start) / 1000;
  const body = (await reply.json()) as PlateAnswer & { title?: string; detail?: string };
  if (!reply.ok) return { answer: null, refusal: body.detail ?? body.title ?? 'no words', seconds };
  return { answer: body, refusal: null, seconds };
}
