import type { UploadedPhoto } from '../api.ts';
import { TopBar } from '../frame/top-bar.tsx';
import { doc, editDoc } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { startWork } from './photo-work.ts';
import { Reopen } from './reopen.tsx';
import { TakePhoto } from './take-photo.tsx';
import { Workspace } from './workspace.tsx';
import './photo.css';

/** A chart in a photo becomes a curve of the blower: take it, put the corners, type the scales, tap the curve. */
export function PhotoPage({ blowerId, photoId }: { blowerId: string; photoId: string | null }) {
  const t = texts.value.photo;
  const begin = (photo: UploadedPhoto): void => {
    editDoc('photo', (before) => ({ ...before, photos: { ...before.photos, [photo.photoId]: startWork(photo) } }));
    go({ page: 'photo', blowerId, photoId: photo.photoId }, 'replace');
  };
  const work = photoId ? doc.value.photos[photoId] : undefined;
  return (
    <div class="photo">
      <TopBar title={t.title} back={{ page: 'blower', blowerId }} />
      {work ? (
        <Workspace blowerId={blowerId} work={work} />
      ) : photoId ? (
        <Reopen photoId={photoId} words={t} onPhoto={begin} />
      ) : (
        <TakePhoto words={t} onPhoto={begin} />
      )}
    </div>
  );
}
