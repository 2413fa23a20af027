import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { ChartReading } from '../api.ts';
import { Icon } from '../drawings/icons.tsx';
import { isWithin } from '../../src/picture/quad.ts';
import { texts } from '../texts/index.ts';
import { CORNER_NAMES, withCorner, type CornerIndex, type Corners } from './corners.ts';
import { gesture, IDLE, type Step, type StageEvent } from './gestures/index.ts';
import { LensView } from './lens-view.tsx';
import type { AxisWork, PhotoWork } from './photo-work.ts';
import { photoPicture } from './photo-address.ts';
import { anglePath, framePath, linePath, outside } from './stage-paths.ts';
import { AxisEnds, Handle, Inked } from './stage-parts.tsx';
import { toStage, viewOf, wholePhoto, zoomedAt, type PhotoPoint, type StagePoint } from './view.ts';

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

const sizeOf = (element: HTMLElement) => ({ width: element.clientWidth, height: element.clientHeight });

/** The photo, its four corners and the traced curves, all by finger: what the fingers mean is decided in `gestures`. */
export function PhotoStage({ work, reading, isSearching, onCorners, onTap }: Props) {
  const root = useRef<HTMLDivElement>(null);
  const step = useSignal<Step | null>(null);
  const photo = { width: work.width_px, height: work.height_px };
  // the reader moves the corners onto the printed frame; until it has answered they stand where the finger left them
  const corners = (reading?.frameCorners_px as unknown as Corners | undefined) ?? work.corners;

  const send = (event: StageEvent): void => {
    if (!step.value) return;
    const next = gesture(step.value.stage, step.value.going, event);
    step.value = next;
    for (const effect of next.effects ?? []) {
      if (effect.type === 'corners') onCorners(effect.corners);
      else onTap(effect.at);
    }
  };
  useEffect(() => {
    const element = root.current;
    if (!element) return undefined;
    const watch = new ResizeObserver(() => {
      const size = sizeOf(element);
      if (size.width === 0 || size.height === 0) return;
      if (step.value) send({ type: 'resize', size });
      else step.value = { stage: { photo, size, view: wholePhoto(photo, size), corners }, going: IDLE };
    });
    watch.observe(element);
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      zoom(Math.exp(-event.deltaY / 300), at(event, element));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      watch.disconnect();
      element.removeEventListener('wheel', onWheel);
    };
  }, []);
  useEffect(() => {
    const now = step.value;
    const inHand = now?.going.name === 'dragging-handle' || now?.going.name === 'pressing-handle';
    if (now && !inHand) step.value = { ...now, stage: { ...now.stage, corners } };
  }, [corners]);

  const zoom = (factor: number, where?: StagePoint): void => {
    const now = step.value;
    if (!now) return;
    const { view, size } = now.stage;
    step.value = {
      ...now,
      stage: { ...now.stage, view: zoomedAt(view, where ?? [size.width / 2, size.height / 2], factor, photo, size) },
    };
  };
  const showPlot = (): void => {
    const now = step.value;
    if (now)
      step.value = {
        ...now,
        stage: { ...now.stage, view: viewOf(now.stage.corners, photo, now.stage.size, PLOT_ROOM) },
      };
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
  const touch = (event: PointerEvent) => ({ id: event.pointerId, at: at(event, root.current!) });
  const t = texts.value.photo;
  const stage = step.value?.stage;
  const going = step.value?.going;
  const held = going?.name === 'dragging-handle' || going?.name === 'pressing-handle' ? going.data.corner : null;
  return (
    <div class="stage-frame">
      <div
        ref={root}
        class="stage ltr"
        onPointerDown={(event) => {
          if (event.button > 0) return;
          root.current?.setPointerCapture(event.pointerId);
          send({ type: 'down', touch: touch(event) });
        }}
        onPointerMove={(event) => send({ type: 'move', touch: touch(event) })}
        onPointerUp={(event) => send({ type: 'up', touch: touch(event) })}
        onPointerCancel={(event) => send({ type: 'interrupt', id: event.pointerId })}
        onKeyDown={(event) => event.key === 'Escape' && send({ type: 'cancel' })}
      >
        {stage && (
          <>
            <img
              src={photoPicture(work.photoId, photo.width)}
              alt={t.photoAlt}
              draggable={false}
              style={{
                width: `${photo.width * stage.view.scale}px`,
                height: `${photo.height * stage.view.scale}px`,
                transform: `translate(${stage.view.x}px, ${stage.view.y}px)`,
              }}
            />
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
                <Inked
                  key={curve.id}
                  d={linePath(stage.view, curve.points_px)}
                  line={3}
                  air
                  dashed={curve.yAxis !== 'y1'}
                />
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
                  onNudge={(by) => nudge(index as CornerIndex, by)}
                />
              ))}
            </svg>
            {held !== null && <LensView photoId={work.photoId} photo={photo} stage={stage} corner={held} />}
          </>
        )}
      </div>
      <div class="zoom-buttons">
        <button type="button" class="icon" aria-label={t.closer} onClick={() => zoom(1.6)}>
          <Icon name="plus" />
        </button>
        <button type="button" class="icon" aria-label={t.whole} onClick={() => zoom(0.01)}>
          <Icon name="whole" />
        </button>
        {allPlaced && (
          <button type="button" class="icon" aria-label={t.plotOnly} onClick={showPlot}>
            <Icon name="chart" />
          </button>
        )}
      </div>
    </div>
  );
}

const at = (event: MouseEvent, element: HTMLElement): StagePoint => {
  const box = element.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
};

/** A scale of a plot stacked with this one stands elsewhere. */
const isOfPanel = ({ id }: AxisWork, { seeds, corners }: PhotoWork): boolean =>
  seeds.some(({ yAxis, at }) => yAxis === id && !isWithin(corners, at));
