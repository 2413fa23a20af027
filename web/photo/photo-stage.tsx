import { useEffect, useRef } from 'preact/hooks';
import type { ChartReading } from '../api.ts';
import { Icon } from '../drawings/icons.tsx';
import { isWithin } from '../../src/picture/quad.ts';
import { texts } from '../texts/index.ts';
import { CORNER_NAMES, withCorner, type CornerIndex, type Corners } from './corners.ts';
import type { Stage } from './gestures/index.ts';
import { LensView } from './lens-view.tsx';
import type { AxisWork, PhotoWork } from './photo-work.ts';
import { StageFrame } from './stage-frame.tsx';
import { anglePath, framePath, linePath, outside } from './stage-paths.ts';
import { AxisEnds, Handle, Inked } from './stage-parts.tsx';
import { useStage } from './use-stage.ts';
import { toStage, type PhotoPoint } from './view.ts';

type Props = {
  work: PhotoWork;
  reading: ChartReading | null;
  /** the plot is being looked for: no corners to drag yet */
  isSearching: boolean;
  onCorners: (corners: Corners) => void;
  onTap: (at: PhotoPoint) => void;
};

/** Room round the plot for rings and lettering, and below it for the buttons. */
const PLOT_ROOM = { sides: 62, top: 34, bottom: 92 };

/** The photo, its four corners and the traced curves, all by finger: what the fingers mean is decided in `gestures`. */
export function PhotoStage({ work, reading, isSearching, onCorners, onTap }: Props) {
  const photo = { width: work.width_px, height: work.height_px };
  // the reader moves the corners onto the printed frame; until it has answered they stand where the finger left them
  const corners = (reading?.frameCorners_px as unknown as Corners | undefined) ?? work.corners;
  const inHand = useStage(photo, corners, (effect) =>
    effect.type === 'corners' ? onCorners(effect.corners) : onTap(effect.at),
  );
  const { step, fit } = inHand;
  useEffect(() => {
    const now = step.value;
    const isHeld = now?.going.name === 'dragging-handle' || now?.going.name === 'pressing-handle';
    if (now && !isHeld) step.value = { ...now, stage: { ...now.stage, corners } };
  }, [corners]);

  const showPlot = (): void => {
    if (step.value) fit(step.value.stage.corners, PLOT_ROOM);
  };
  // once all corners are on, the plot fills the stage: the next thing to do is to tap a curve in it
  const allPlaced = work.placed.every(Boolean);
  const wasPlaced = useRef(allPlaced);
  useEffect(() => {
    if (allPlaced && !wasPlaced.current) showPlot();
    wasPlaced.current = allPlaced;
  }, [allPlaced]);
  const nudge = (index: CornerIndex, by: PhotoPoint): void => {
    const now = step.value;
    if (!now) return;
    const [x, y] = now.stage.corners[index];
    onCorners(withCorner(now.stage.corners, index, [x + by[0], y + by[1]], photo));
  };
  const t = texts.value.photo;
  const going = step.value?.going;
  const held = going?.name === 'dragging-handle' || going?.name === 'pressing-handle' ? going.data.corner : null;
  return (
    <StageFrame
      photoId={work.photoId}
      inHand={inHand}
      alt={t.photoAlt}
      drawing={(stage) => (
        <>
          <ChartDrawing {...{ stage, work, reading, isSearching, held }} onNudge={nudge} />
          {held !== null && <LensView photoId={work.photoId} photo={photo} stage={stage} corner={held} />}
        </>
      )}
      buttons={
        allPlaced && (
          <button type="button" class="icon" aria-label={t.plotOnly} onClick={showPlot}>
            <Icon name="chart" />
          </button>
        )
      }
    />
  );
}

type DrawingProps = Pick<Props, 'work' | 'reading' | 'isSearching'> & {
  stage: Stage;
  held: CornerIndex | null;
  onNudge: (index: CornerIndex, by: PhotoPoint) => void;
};

/** Frame, curves, taps, lettered ends of the axes and the corners to take hold of. */
function ChartDrawing({ stage, work, reading, isSearching, held, onNudge }: DrawingProps) {
  const t = texts.value.photo;
  return (
    <svg
      class="stage-drawing"
      width={stage.size.width}
      height={stage.size.height}
      role="group"
      aria-label={t.cornersGroup}
    >
      {!isSearching && <Inked d={framePath(stage.view, stage.corners)} line={1.6} />}
      {reading?.otherFrames_px?.map((frame) => (
        <Inked key={`${frame[0]}`} d={framePath(stage.view, frame as unknown as Corners)} line={1.2} dashed />
      ))}
      {reading?.curves.map((curve) => (
        <Inked key={curve.id} d={linePath(stage.view, curve.points_px)} line={3} air dashed={curve.yAxis !== 'y1'} />
      ))}
      {work.seeds.map((seed) => (
        <circle
          key={seed.id}
          cx={toStage(stage.view, seed.at)[0]}
          cy={toStage(stage.view, seed.at)[1]}
          r="5"
          class="seed"
        />
      ))}
      {!isSearching && (
        <AxisEnds
          axes={work.axes.filter((axis) => !isOfPanel(axis, work))}
          place={(index, towards) => outside(stage.view, stage.corners, index, towards)}
        />
      )}
      {(isSearching ? [] : CORNER_NAMES).map((name, index) => (
        <Handle
          key={name}
          name={t.corners[name]}
          d={anglePath(stage.view, stage.corners, index, 18)}
          at={toStage(stage.view, stage.corners[index as CornerIndex])}
          placed={work.placed[index as CornerIndex]}
          held={held === index}
          onNudge={(by) => onNudge(index as CornerIndex, by)}
        />
      ))}
    </svg>
  );
}

/** A scale of a plot stacked with this one stands elsewhere. */
const isOfPanel = ({ id }: AxisWork, { seeds, corners }: PhotoWork): boolean =>
  seeds.some(({ yAxis, at }) => yAxis === id && !isWithin(corners, at));
