import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { UploadedPhoto } from '../api.ts';
import { texts } from '../texts/index.ts';
import { sizeOfPhoto } from './photo-size.ts';
import { TakePhoto, type PhotoWords } from './take-photo.tsx';

/** A photo known to the server but not to this browser: its size is learnt, or another is taken. */
export function Reopen({
  photoId,
  words,
  onPhoto,
}: {
  photoId: string;
  words: PhotoWords;
  onPhoto: (photo: UploadedPhoto) => void;
}) {
  const t = texts.value;
  const gone = useSignal(false);
  useEffect(() => {
    let isHere = true;
    void sizeOfPhoto(photoId).then((photo) => {
      if (!isHere) return;
      if (photo) onPhoto(photo);
      else gone.value = true;
    });
    return () => {
      isHere = false;
    };
  }, [photoId]);
  if (!gone.value) return <p class="second">{t.common.working}</p>;
  return (
    <>
      <p class="amiss" role="alert">
        {t.photo.problems.gone}
      </p>
      <TakePhoto words={words} onPhoto={onPhoto} />
    </>
  );
}
