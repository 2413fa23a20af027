import { Icon } from '../drawings/icons.tsx';
import { photoThumb } from './photo-address.ts';

type Props = {
  photoIds: readonly string[];
  /** the name of the n-th photo */
  nameOf: (n: string) => string;
  /** what the camera is for */
  take: string;
  onOpen: (photoId: string | null) => void;
};

/** Photos kept of a thing, each a way back to what was read from it, and the camera for another. */
export function KeptPhotos({ photoIds, nameOf, take, onOpen }: Props) {
  return (
    <div class="kept-photos">
      <button type="button" class="press" onClick={() => onOpen(null)}>
        <Icon name="camera" />
        {take}
      </button>
      {photoIds.map((photoId, i) => (
        <button key={photoId} type="button" aria-label={nameOf(String(i + 1))} onClick={() => onOpen(photoId)}>
          <img src={photoThumb(photoId)} alt="" width="66" height="44" loading="lazy" />
        </button>
      ))}
    </div>
  );
}
