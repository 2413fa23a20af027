import { useEffect } from 'preact/hooks';
import { Icon } from '../drawings/icons.tsx';
import type { Corners } from '../photo/corners.ts';
import { StageFrame } from '../photo/stage-frame.tsx';
import { Inked } from '../photo/stage-parts.tsx';
import { linePath } from '../photo/stage-paths.ts';
import { useStage } from '../photo/use-stage.ts';
import { viewOf, type PhotoPoint, type View } from '../photo/view.ts';
import { texts } from '../texts/index.ts';

type Box = readonly [number, number, number, number];
/** A place on the photo that something was read from. */
export type FoundPlace = { id: string; box: Box; doubted: boolean };

type Props = {
  photo: { photoId: string; width_px: number; height_px: number };
  alt: string;
  /** outline of the plate or sheet in the photo; empty until it is found */
  outline: readonly PhotoPoint[];
  places: readonly FoundPlace[];
  /** the place being looked at */
  at: string | null;
  /** draws that one alone: places that lie close together would hide what they hold */
  isOnlyOne?: boolean;
  onTap: (id: string) => void;
};

/** No corners to take hold of: all four lie out of any finger's reach. */
const NO_HANDLES: Corners = [
  [-1e9, -1e9],
  [-1e9, -1e9],
  [-1e9, -1e9],
  [-1e9, -1e9],
];
const ROOM = { sides: 14, top: 14, bottom: 14 };

/** Between print and outline, so that no figure is hidden by it [CSS px]. */
const AWAY_PX = 3;

function outlineOf([x, y, width, height]: Box, view: View): string {
  const away = AWAY_PX / view.scale;
  const [left, top, right, bottom] = [x - away, y - away, x + width + away, y + height + away];
  return `${linePath(view, [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ])}Z`;
}

/** The photo with every place that was read outlined; a tap on one leads to its figure. */
export function PlateStage({ photo, alt, outline, places, at, isOnlyOne, onTap }: Props) {
  const t = texts.value.plate;
  const size = { width: photo.width_px, height: photo.height_px };
  const inHand = useStage(
    size,
    NO_HANDLES,
    (effect) => {
      if (effect.type !== 'tap') return;
      const place = placeAt(places, effect.at);
      if (place) onTap(place.id);
    },
    (stage) => (outline.length > 0 ? { ...stage, view: viewOf(outline, size, stage.size, ROOM) } : stage),
  );
  const showPlate = (): void => inHand.fit(outline, ROOM);
  const isFound = outline.length > 0;
  useEffect(() => {
    if (isFound) showPlate();
  }, [isFound]);
  return (
    <StageFrame
      photoId={photo.photoId}
      inHand={inHand}
      alt={alt}
      drawing={({ size: { width, height }, view }) => (
        <svg class="stage-drawing" width={width} height={height} aria-hidden="true">
          {places
            .filter(({ id }) => !isOnlyOne || id === at)
            .map(({ id, box, doubted }) => (
              <Inked key={id} d={outlineOf(box, view)} line={id === at ? 4 : 1.6} dashed={doubted && id !== at} />
            ))}
        </svg>
      )}
      buttons={
        isFound && (
          <button type="button" class="icon" aria-label={t.plateOnly} onClick={showPlate}>
            <Icon name="plate" />
          </button>
        )
      }
    />
  );
}

/** The smallest place under a finger. */
function placeAt(places: readonly FoundPlace[], [px, py]: PhotoPoint): FoundPlace | undefined {
  return places
    .filter(({ box: [x, y, width, height] }) => px >= x && px <= x + width && py >= y && py <= y + height)
    .toSorted((a, b) => a.box[2] * a.box[3] - b.box[2] * b.box[3])[0];
}
