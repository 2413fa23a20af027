import { photos } from '../api.ts';

/** Where the upright photo of an evidence row is found; the browser keeps it, so a thumbnail costs nothing more. */
export const PHOTO_THUMB = (photoId: string): string => photos.address(photoId);
