import { photos } from '../api.ts';

/** Wide enough for the lens on any phone, small enough for a slow one to hold in memory. */
const STAGE_WIDTH_PX = 2400;

/** Where the upright photo is found, never wider than it is; the browser keeps it. */
export const photoPicture = (photoId: string, width_px: number): string =>
  width_px > STAGE_WIDTH_PX ? `${photos.address(photoId)}?width=${STAGE_WIDTH_PX}` : photos.address(photoId);

export const photoThumb = (photoId: string): string => `${photos.address(photoId)}?width=132`;
