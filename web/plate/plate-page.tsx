import type { UploadedPhoto } from '../api.ts';
import { TopBar } from '../frame/top-bar.tsx';
import { Reopen } from '../photo/reopen.tsx';
import { TakePhoto } from '../photo/take-photo.tsx';
import { doc, editDoc } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { startPlate } from './plate-work.ts';
import { PlateWorkspace } from './plate-workspace.tsx';
import '../photo/photo.css';
import './plate.css';

/** The plate of a motor or blower in a photo becomes its data: take it, look at what is doubted, put it into the job. */
export function PlatePage({ blowerId, photoId }: { blowerId: string; photoId: string | null }) {
  const t = texts.value.plate;
  const begin = (photo: UploadedPhoto): void => {
    editDoc('photo', (before) => ({ ...before, plates: { ...before.plates, [photo.photoId]: startPlate(photo) } }));
    go({ page: 'plate', blowerId, photoId: photo.photoId }, 'replace');
  };
  const work = photoId ? doc.value.plates?.[photoId] : undefined;
  return (
    <div class="photo plate">
      <TopBar title={t.title} back={{ page: 'blower', blowerId }} />
      {work ? (
        <PlateWorkspace blowerId={blowerId} work={work} />
      ) : photoId ? (
        <Reopen photoId={photoId} words={t} onPhoto={begin} />
      ) : (
        <TakePhoto words={t} onPhoto={begin} />
      )}
    </div>
  );
}
