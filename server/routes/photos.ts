import { Router } from 'express';
import type { Request, Response } from 'express';
import multer from 'multer';
import type { Decoder } from '../image/decoder.ts';
import { isMovingPng, pictureFormat } from '../image/signature.ts';
import { MOST_PIXELS } from '../image/limits.ts';
import type { PictureFault } from '../image/upright.ts';
import { Refusal, onlyMethods } from '../problem.ts';
import type { PhotoReader } from '../readers/photo-reader.ts';
import { reply } from '../reply.ts';
import { TookTooLong } from '../side-process.ts';
import type { PhotoStore, StoredPhoto } from '../store/photos.ts';

const LARGEST_PHOTO_bytes = 40 * 1024 * 1024;
const NARROWEST_px = 16;
const WIDEST_px = 4096;

export type PhotoRequest = Request<{ photoId: string }>;
export type PhotoParts = { photos: PhotoStore; decoder: Decoder };
type IncomingParts = PhotoParts & { photoReader: PhotoReader };

const upload = multer({
  storage: multer.memoryStorage(),
  limits: { fileSize: LARGEST_PHOTO_bytes, files: 1, fields: 10, fieldSize: 1000, parts: 12 },
}).single('photo');

const KINDS = 'a JPEG, PNG or WebP picture';

const REFUSALS: Record<PictureFault, () => Refusal> = {
  unreadable: () =>
    new Refusal(422, `This file cannot be read to its end as a picture; send it again, or another as ${KINDS}.`),
  'too-many-pixels': () =>
    new Refusal(422, `The picture has more than ${MOST_PIXELS / 1e6} megapixels; send a smaller one.`),
  moving: () => new Refusal(422, 'This picture moves; send one that stands still.'),
  'too-small': () => new Refusal(422, 'The picture is too small to show anything.'),
};

const NO_HEIC =
  'This HEIC picture cannot be decoded here; send it as JPEG (on the phone: camera format “most compatible”).';

const TOO_SLOW = 'This picture takes too long to decode; send it as a plain JPEG.';

const refusalOf = (fault: PictureFault, isDecodable: boolean): Refusal =>
  fault === 'unreadable' && !isDecodable ? new Refusal(415, NO_HEIC) : REFUSALS[fault]();

const NO_FILE = [{ path: '/photo', message: 'Choose a picture.' }];

/** Only a multipart body is looked into; what is wrong inside it is the sender's mistake, whoever words it. */
function uploadedFile(req: Request, res: Response): Promise<Express.Multer.File> {
  if (!req.is('multipart/form-data'))
    throw new Refusal(415, 'Send the photo as multipart/form-data, in the field photo.');
  return new Promise((resolve, reject) => {
    upload(req, res, (error: unknown) => {
      if (error instanceof multer.MulterError) reject(error);
      else if (error) reject(new Refusal(400, 'The upload ends too early or is not multipart/form-data.'));
      else if (req.file) resolve(req.file);
      else reject(new Refusal(400, 'The upload holds no file in the field photo.', NO_FILE));
    });
  });
}

async function add({ photos, decoder, photoReader }: IncomingParts, req: Request, res: Response): Promise<void> {
  const { buffer } = await uploadedFile(req, res);
  const format = pictureFormat(buffer);
  if (!format) throw new Refusal(415, `This is no picture that can be read here; send ${KINDS}.`);
  if (isMovingPng(buffer)) throw REFUSALS.moving();
  const photo = await photos.add(buffer, format.ending, decoder.upright).catch((error: unknown) => {
    throw error instanceof TookTooLong ? new Refusal(422, TOO_SLOW) : error;
  });
  if (typeof photo === 'string') throw refusalOf(photo, format.isDecodable);
  const { photoId, width_px, height_px } = photo;
  photoReader.look(photo.uprightFile);
  res.location(`/api/photos/${photoId}`);
  reply(res, 201, { photoId, width_px, height_px });
}

/** The photo a call is about. */
export async function photoOf({ photos }: PhotoParts, req: PhotoRequest): Promise<StoredPhoto> {
  const photo = await photos.find(req.params.photoId);
  if (!photo) throw new Refusal(404, 'There is no such photo; take it or choose it again.');
  return photo;
}

function widthAsked(req: PhotoRequest): number | null {
  const text = req.query['width'];
  if (text === undefined) return null;
  const width = typeof text === 'string' && /^\d+$/.test(text) ? Number(text) : 0;
  if (width >= NARROWEST_px && width <= WIDEST_px) return width;
  throw new Refusal(400, `width must be a whole number from ${NARROWEST_px} to ${WIDEST_px}.`);
}

/** A photo never changes under its id, so the browser may keep it. */
async function show(parts: PhotoParts, req: PhotoRequest, res: Response): Promise<void> {
  const width_px = widthAsked(req);
  const { uprightFile } = await photoOf(parts, req);
  res.set('Cache-Control', 'private, max-age=31536000, immutable').type('image/jpeg');
  if (width_px === null) res.sendFile(uprightFile, { cacheControl: false, dotfiles: 'allow' });
  else res.send(Buffer.from(await parts.decoder.narrowed(uprightFile, width_px)));
}

/** `/api/photos`: photos come in, are turned upright, and are shown. What is read from them stands in readings.ts. */
export function photoRoutes(parts: IncomingParts): Router {
  const router = Router();
  router
    .route('/')
    .post((req, res) => add(parts, req, res))
    .all(onlyMethods('POST'));
  router
    .route('/:photoId')
    .get((req, res) => show(parts, req, res))
    .all(onlyMethods('GET'));
  return router;
}
