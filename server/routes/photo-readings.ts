import { Router } from 'express';
import type { Request, RequestHandler } from 'express';
import { jsonBytes, jsonOf } from '../json-body.ts';
import { Refusal, onlyMethods } from '../problem.ts';
import { photoOf } from './photos.ts';
import type { PhotoParts } from './photos.ts';

const notYet =
  (parts: PhotoParts, what: string): RequestHandler<{ photoId: string }> =>
  async (req) => {
    await photoOf(parts, req);
    jsonOf(req as Request);
    throw new Refusal(501, `Reading ${what} from a photo is not there yet; type it in.`);
  };

/** `/api/photos/:photoId/…`: what can be read from a photo. */
export function photoReadingRoutes(parts: PhotoParts): Router {
  const router = Router();
  const post = (path: string, handler: RequestHandler<{ photoId: string }>) =>
    router.route(`/:photoId/${path}`).post(jsonBytes, handler).all(onlyMethods('POST'));
  post('nameplate', notYet(parts, 'a motor plate'));
  post('readings-sheet', notYet(parts, 'a sheet of readings'));
  return router;
}
