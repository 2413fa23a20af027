import type { CornerIndex } from './corners.ts';
import type { Stage } from './gestures/index.ts';
import { lensFor } from './lens.ts';
import { photoPicture } from './photo-address.ts';
import { linePath } from './stage-paths.ts';
import type { Size } from './view.ts';

/** The lens over the corner in hand: the photo enlarged, a cross where the corner stands, and the frame's sides meeting there. */
export function LensView({
  photoId,
  photo,
  stage,
  corner,
}: {
  photoId: string;
  photo: Size;
  stage: Stage;
  corner: CornerIndex;
}) {
  const at = stage.corners[corner];
  const { centre, radius, view, line } = lensFor(at, stage.view, stage.size);
  const before = stage.corners[((corner + 3) % 4) as CornerIndex];
  const after = stage.corners[((corner + 1) % 4) as CornerIndex];
  const clip = {
    left: `${centre[0] - radius}px`,
    top: `${centre[1] - radius}px`,
    width: `${2 * radius}px`,
    height: `${2 * radius}px`,
  };
  const shift = `translate(${view.x - (centre[0] - radius)}px, ${view.y - (centre[1] - radius)}px)`;
  return (
    <>
      {line && (
        <svg class="stage-drawing" width={stage.size.width} height={stage.size.height} aria-hidden="true">
          <path d={`M${line[0]}L${line[1]}`} class="on-photo-halo" stroke-width="5" />
          <path d={`M${line[0]}L${line[1]}`} class="on-photo" stroke-width="2" />
        </svg>
      )}
      <div class="lens" style={clip} aria-hidden="true">
        <img
          src={photoPicture(photoId, photo.width)}
          alt=""
          draggable={false}
          style={{ width: `${photo.width * view.scale}px`, height: `${photo.height * view.scale}px`, transform: shift }}
        />
        <svg width={2 * radius} height={2 * radius}>
          <g transform={`translate(${radius - centre[0]} ${radius - centre[1]})`}>
            <path d={linePath(view, [before, at, after])} class="on-photo-air" stroke-width="1.6" />
          </g>
          <path
            d={`M0 ${radius}H${radius - 7}M${radius + 7} ${radius}H${2 * radius}M${radius} 0V${radius - 7}M${radius} ${radius + 7}V${2 * radius}`}
            class="on-photo"
            stroke-width="1"
          />
        </svg>
      </div>
    </>
  );
}
