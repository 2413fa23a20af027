import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { UploadedPhoto } from '../api.ts';
import { TopBar } from '../frame/top-bar.tsx';
import { doc, editDoc } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { photos } from '../api.ts';
import { startWork } from './photo-work.ts';
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
        <Reopen photoId={photoId} onPhoto={begin} />
      ) : (
        <TakePhoto onPhoto={begin} />
      )}
    </div>
  );
}

/** A photo known to the server but not to this browser: its size is learnt from the picture itself. */
function Reopen({ photoId, onPhoto }: { photoId: string; onPhoto: (photo: UploadedPhoto) => void }) {
  const t = texts.value;
  const gone = useSignal(false);
  useEffect(() => {
    const picture = new Image();
    picture.onload = () => onPhoto({ photoId, width_px: picture.naturalWidth, height_px: picture.naturalHeight });
    picture.onerror = () => (gone.value = true);
    picture.src = photos.address(photoId);
    return () => {
      picture.onload = null;
      picture.onerror = null;
    };
  }, [photoId]);
  if (!gone.value) return <p class="second">{t.common.working}</p>;
  return (
    <>
      <p class="amiss" role="alert">
        {t.photo.problems.gone}
      </p>
      <TakePhoto onPhoto={onPhoto} />
    </>
  );
}
