import { Router } from 'express';
import type { Request, RequestHandler, Response } from 'express';
import { ChartHints, type ChartStep } from '../../src/chart/index.ts';
import { understand } from '../../src/index.ts';
import { jsonBytes, jsonOf } from '../json-body.ts';
import { LINES, Refusal, onlyMethods, refusalOf } from '../problem.ts';
import type { ChartAnswer, ChartReader } from '../readers/chart-reader.ts';
import { replyText } from '../reply.ts';
import { Stopped, TookTooLong } from '../side-process.ts';
import { photoOf } from './photos.ts';
import type { PhotoParts, PhotoRequest } from './photos.ts';

export type PhotoReadingParts = PhotoParts & { chartReader: ChartReader };

const TOO_SLOW = 'This chart takes too long to read; mark its corners closer, or send a smaller photo.';

async function readChart(parts: PhotoReadingParts, req: PhotoRequest, res: Response): Promise<void> {
  const photo = await photoOf(parts, req);
  const hints = understand(ChartHints, jsonOf(req));
  if (!hints.ok) throw refusalOf(hints.issues);
  const gone = new AbortController();
  res.on('close', () => gone.abort());
  const read = (onStep?: (step: ChartStep) => void): Promise<string> =>
    textOf(parts.chartReader.read(photo.uprightFile, hints.value, { signal: gone.signal, ...(onStep && { onStep }) }));
  const answered =
    req.headers.accept === LINES ? replyInLines(res, read) : read().then((text) => replyText(res, 200, text));
  await answered.catch((error: unknown) => {
    // nobody is there to be answered
    if (!(error instanceof Stopped)) throw error;
  });
}

async function textOf(answer: Promise<ChartAnswer>): Promise<string> {
  const read = await answer.catch((error: unknown) => {
    throw error instanceof TookTooLong ? new Refusal(422, TOO_SLOW) : error;
  });
  if ('issues' in read) throw refusalOf(read.issues);
  return read.text;
}

/** Each step as it is begun, then the reading; a problem becomes the last line. */
async function replyInLines(res: Response, read: (onStep: (step: ChartStep) => void) => Promise<string>) {
  res.status(200).set('Cache-Control', 'no-store').type(LINES);
  const text = await read((step) => void res.write(`${JSON.stringify({ step })}\n`));
  res.end(`{"reading":${text}}\n`);
}

const notYet =
  (parts: PhotoParts, what: string): RequestHandler<{ photoId: string }> =>
  async (req) => {
    await photoOf(parts, req);
    jsonOf(req as Request);
    throw new Refusal(501, `Reading ${what} from a photo is not there yet; type it in.`);
  };

/** `/api/photos/:photoId/…`: what can be read from a photo. */
export function photoReadingRoutes(parts: PhotoReadingParts): Router {
  const router = Router();
  const post = (path: string, handler: RequestHandler<{ photoId: string }>) =>
    router.route(`/:photoId/${path}`).post(jsonBytes, handler).all(onlyMethods('POST'));
  post('chart', (req, res) => readChart(parts, req, res));
  post('nameplate', notYet(parts, 'a motor plate'));
  post('readings-sheet', notYet(parts, 'a sheet of readings'));
  return router;
}
