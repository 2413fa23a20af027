import { photoPicture } from '../photo/photo-address.ts';
import { cropOf } from './crop-view.ts';

type Props = {
  photo: { photoId: string; width_px: number; height_px: number };
  box: readonly [number, number, number, number];
  /** brings the print upright [°] */
  turn_deg: number;
  /** nothing but the box: a cell of a table has its own room */
  isCell?: boolean;
  /** what can be seen on it, for who cannot see it */
  alt: string;
};

/** The piece of the photo a figure was read from, upright, as large as its place allows. */
export function Crop({ photo, box, turn_deg, isCell, alt }: Props) {
  const { middle, width, height } = cropOf(box, turn_deg, isCell ? 0 : undefined);
  return (
    <svg
      class={isCell ? 'crop cell ltr' : 'crop ltr'}
      viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`}
      role={alt === '' ? undefined : 'img'}
      aria-hidden={alt === ''}
      aria-label={alt || undefined}
    >
      <svg
        x={-width / 2}
        y={-height / 2}
        width={width}
        height={height}
        viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`}
      >
        <image
          href={photoPicture(photo.photoId, photo.width_px)}
          width={photo.width_px}
          height={photo.height_px}
          transform={`rotate(${turn_deg}) translate(${-middle[0]} ${-middle[1]})`}
        />
      </svg>
    </svg>
  );
}
