import type { UploadedPhoto } from '../api.ts';
import { TopBar } from '../frame/top-bar.tsx';
import { Reopen } from '../photo/reopen.tsx';
import { TakePhoto } from '../photo/take-photo.tsx';
import { doc, editDoc } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { startSheet } from './sheet-work.ts';
import { SheetWorkspace } from './sheet-workspace.tsx';
import '../photo/photo.css';
import '../plate/plate.css';
import './sheet.css';

type Props = { blowerId: string; index: number; photoId: string | null };

/** The sheet on which readings were written becomes rows of the notebook. */
export function SheetPage({ blowerId, index, photoId }: Props) {
  const t = texts.value.sheet;
  const begin = (photo: UploadedPhoto): void => {
    editDoc('photo', (before) => ({ ...before, sheets: { ...before.sheets, [photo.photoId]: startSheet(photo) } }));
    go({ page: 'sheet', blowerId, index, photoId: photo.photoId }, 'replace');
  };
  const work = photoId ? doc.value.sheets?.[photoId] : undefined;
  return (
    <div class="photo sheet">
      <TopBar title={t.title} back={{ page: 'readings', blowerId, index }} />
      {work ? (
        <SheetWorkspace blowerId={blowerId} index={index} work={work} />
      ) : photoId ? (
        <Reopen photoId={photoId} words={t} onPhoto={begin} />
      ) : (
        <TakePhoto words={t} onPhoto={begin} />
      )}
    </div>
  );
}
