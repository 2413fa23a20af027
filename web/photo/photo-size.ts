import { photos, type UploadedPhoto } from '../api.ts';

/** The size of a photo that the server knows and this browser does not, from the picture itself; null where it is gone. */
export const sizeOfPhoto = (photoId: string): Promise<UploadedPhoto | null> =>
  new Promise((resolve) => {
    const picture = new Image();
    picture.onload = () => resolve({ photoId, width_px: picture.naturalWidth, height_px: picture.naturalHeight });
    picture.onerror = () => resolve(null);
    picture.src = photos.address(photoId);
  });
