import { Router } from 'express';
import type { Request, Response } from 'express';
import { understand } from '../../src/index.ts';
import { jsonBytes, jsonOf } from '../json-body.ts';
import { LINES, Refusal, onlyMethods, refusalOf } from '../problem.ts';
import { READERS, type ReadingKind } from '../readers/kinds.ts';
import type { PhotoReader } from '../readers/photo-reader.ts';
import { replyText } from '../reply.ts';
import { Stopped, TookTooLong } from '../side-process.ts';
import { photoOf } from './photos.ts';
import type { PhotoParts, PhotoRequest } from './photos.ts';

export type PhotoReadingParts = PhotoParts & { photoReader: PhotoReader };

async function readPhoto(parts: PhotoReadingParts, kind: ReadingKind, req: PhotoRequest, res: Response): Promise<void> {
  const photo = await photoOf(parts, req);
  const hints = understand(READERS[kind].hints, jsonOf(req as Request));
  if (!hints.ok) throw refusalOf(hints.issues);
  const gone = new AbortController();
  res.on('close', () => gone.abort());
  const read = async (onStep?: (step: string) => void): Promise<string> => {
    const how = { signal: gone.signal, ...(onStep && { onStep }) };
    const answer = await parts.photoReader.read(kind, photo.uprightFile, hints.value, how).catch((error: unknown) => {
      throw error instanceof TookTooLong ? new Refusal(422, READERS[kind].tooSlow) : error;
    });
    if ('issues' in answer) throw refusalOf(answer.issues);
    return answer.text;
  };
  const answered =
    req.headers.accept === LINES ? replyInLines(res, read) : read().then((text) => replyText(res, 200, text));
  await answered.catch((error: unknown) => {
    // nobody is there to be answered
    if (!(error instanceof Stopped)) throw error;
  });
}

/** Each step as it is begun, then the reading; a problem becomes the last line. */
async function replyInLines(res: Response, read: (onStep: (step: string) => void) => Promise<string>): Promise<void> {
  res.status(200).set('Cache-Control', 'no-store').type(LINES);
  const text = await read((step) => void res.write(`${JSON.stringify({ step })}\n`));
  res.end(`{"reading":${text}}\n`);
}

/** `/api/photos/:photoId/…`: what can be read from a photo. */
export function photoReadingRoutes(parts: PhotoReadingParts): Router {
  const router = Router();
  for (const kind of Object.keys(READERS) as ReadingKind[])
    router
      .route(`/:photoId/${kind}`)
      .post(jsonBytes, (req: PhotoRequest, res: Response) => readPhoto(parts, kind, req, res))
      .all(onlyMethods('POST'));
  return router;
}
