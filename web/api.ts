import type { Job } from '../src/job/types.ts';
import type { PlateReading } from '../src/plate/reading.ts';
import type { PhotoPoint } from './photo/view.ts';
import type { SheetReading } from './sheet/sheet-reading.ts';

/** One problem as the server words it (RFC 9457), or what the page says when there was no answer at all. */
export type Problem = { status: number; title: string; detail: string; errors: { path: string; message: string }[] };
export type Answer<T> = { ok: true; value: T; etag: string | null } | { ok: false; problem: Problem };

/** status 0: no answer (server stopped, no network, or the call was given up). */
const silence = (detail: string): Problem => ({ status: 0, title: 'no answer', detail, errors: [] });

async function call<T>(path: string, init: RequestInit = {}): Promise<Answer<T>> {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch (error) {
    return { ok: false, problem: silence(error instanceof Error ? error.message : '') };
  }
  const text = await response.text().catch(() => '');
  const body = parse(text);
  if (!response.ok) return { ok: false, problem: problemFrom(response.status, body) };
  return { ok: true, value: body as T, etag: response.headers.get('ETag') };
}

function parse(text: string): unknown {
  try {
    return text === '' ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

function problemFrom(status: number, body: unknown): Problem {
  const given = (body ?? {}) as Partial<Problem>;
  return { status, title: given.title ?? String(status), detail: given.detail ?? '', errors: given.errors ?? [] };
}

const json = (
  method: string,
  body: unknown,
  headers: Record<string, string> = {},
  signal?: AbortSignal,
): RequestInit => ({
  method,
  headers: { 'Content-Type': 'application/json', ...headers },
  body: JSON.stringify(body),
  signal: signal ?? null,
});

export type JobListing = { jobId: string; name: string };

export const jobs = {
  list: () => call<unknown>('/api/jobs'),
  get: (jobId: string) => call<Job>(`/api/jobs/${encodeURIComponent(jobId)}`),
  put: (jobId: string, job: Job, etag: string | null) =>
    call<unknown>(`/api/jobs/${encodeURIComponent(jobId)}`, json('PUT', job, etag ? { 'If-Match': etag } : {})),
  remove: (jobId: string) => call<unknown>(`/api/jobs/${encodeURIComponent(jobId)}`, { method: 'DELETE' }),
};

export type UploadedPhoto = { photoId: string; width_px: number; height_px: number };

export type ChartHints = {
  frameCorners_px?: PhotoPoint[];
  axes?: { id: string; quantity: string; unit: string; scale: 'linear' | 'log'; min: number; max: number }[];
  seeds?: { yAxis: string; quantity: string; speed_rpm: number | null; point_px: PhotoPoint }[];
};
export type ChartAxis = {
  id: string;
  quantity: string;
  unit: string;
  scale: string;
  min: number;
  max: number;
  confidence: number;
};
export type ChartCurve = {
  id: string;
  yAxis: string;
  quantity: string;
  speed_rpm: number | null;
  points: [number, number][];
  points_px: PhotoPoint[];
  confidence: number;
};
export type ChartReading = {
  frameCorners_px: PhotoPoint[];
  axes: ChartAxis[];
  curves: ChartCurve[];
  confidence: { overall: number; needsReview: boolean };
  warnings: { code: string; text: string; path: string }[];
  airDensity_kg_m3?: number;
  otherFrames_px?: PhotoPoint[][];
};

/** How far the reading of a chart is. */
export type ChartStep = 'frame' | 'labels' | 'curves';

/** How a reading is asked for: what hears of each step as it is begun, and the way to give it up. */
type WhileReading<Step extends string = string> = { onStep: (step: Step) => void; signal: AbortSignal };

export const photos = {
  address: (photoId: string) => `/api/photos/${encodeURIComponent(photoId)}`,
  readChart: (photoId: string, hints: ChartHints, how: WhileReading<ChartStep>) =>
    readPhoto<ChartReading, ChartStep>(photoId, 'chart', hints, how),
  readPlate: (photoId: string, how: WhileReading) => readPhoto<PlateReading>(photoId, 'nameplate', {}, how),
  readSheet: (photoId: string, how: WhileReading) => readPhoto<SheetReading>(photoId, 'readings-sheet', {}, how),
};

/** Reads a photo and tells which step it is at. */
async function readPhoto<Reading, Step extends string = string>(
  photoId: string,
  what: string,
  hints: object,
  { onStep, signal }: WhileReading<Step>,
): Promise<Answer<Reading>> {
  const asked = json('POST', hints, { Accept: 'application/x-ndjson' }, signal);
  try {
    const response = await fetch(`${photos.address(photoId)}/${what}`, asked);
    if (!response.ok || !response.body)
      return { ok: false, problem: problemFrom(response.status, parse(await response.text())) };
    for await (const line of linesOf(response.body)) {
      const news = parse(line) as { step?: Step; reading?: Reading; problem?: Problem } | null;
      if (news?.step) onStep(news.step);
      if (news?.reading) return { ok: true, value: news.reading, etag: null };
      if (news?.problem) return { ok: false, problem: problemFrom(news.problem.status, news.problem) };
    }
    return { ok: false, problem: silence('') };
  } catch (error) {
    return { ok: false, problem: silence(error instanceof Error ? error.message : '') };
  }
}

async function* linesOf(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = body.pipeThrough(new TextDecoderStream() as ReadableWritablePair<string, Uint8Array>).getReader();
  let kept = '';
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    const lines = (kept + value).split('\n');
    kept = lines.pop() ?? '';
    yield* lines;
  }
  if (kept !== '') yield kept;
}

/**
 * Sends a photo and tells how far it is. XMLHttpRequest, because fetch cannot report how much was sent.
 * @returns a promise of the answer and a way to give up
 */
export function sendPhoto(
  file: Blob,
  onProgress: (share: number) => void,
): { answer: Promise<Answer<UploadedPhoto>>; giveUp: () => void } {
  const request = new XMLHttpRequest();
  const answer = new Promise<Answer<UploadedPhoto>>((resolve) => {
    request.open('POST', '/api/photos');
    request.upload.onprogress = (event) => onProgress(event.lengthComputable ? event.loaded / event.total : 0);
    request.onload = () => {
      const body = parse(request.responseText);
      if (request.status >= 200 && request.status < 300)
        resolve({ ok: true, value: body as UploadedPhoto, etag: null });
      else resolve({ ok: false, problem: problemFrom(request.status, body) });
    };
    request.onerror = () => resolve({ ok: false, problem: silence('') });
    request.onabort = () => resolve({ ok: false, problem: silence('given up') });
    const form = new FormData();
    form.append('photo', file);
    request.send(form);
  });
  return { answer, giveUp: () => request.abort() };
}
