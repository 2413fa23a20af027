import type { PhotoWork } from '../photo/photo-work.ts';
import type { Doc } from '../state/doc.ts';

/** Changes the work on one photo; nothing else of the document. */
export function changePhoto(doc: Doc, photoId: string, change: (work: PhotoWork) => PhotoWork): Doc {
  const work = doc.photos[photoId];
  return work ? { ...doc, photos: { ...doc.photos, [photoId]: change(work) } } : doc;
}
