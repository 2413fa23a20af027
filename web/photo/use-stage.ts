import { useSignal, type Signal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Corners } from './corners.ts';
import { gesture, IDLE, type Effect, type Stage, type StageEvent, type Step } from './gestures/index.ts';
import { viewOf, wholePhoto, zoomedAt, type PhotoPoint, type Room, type Size, type StagePoint } from './view.ts';

export type StageInHand = {
  root: RefObject<HTMLDivElement | null>;
  /** null until the stage has a size */
  step: Signal<Step | null>;
  send: (event: StageEvent) => void;
  zoom: (factor: number, where?: StagePoint) => void;
  /** fills the stage with these points of the photo */
  fit: (points: readonly PhotoPoint[], room: Room) => void;
};

const sizeOf = (element: HTMLElement): Size => ({ width: element.clientWidth, height: element.clientHeight });

/** Where the mouse or finger is on the stage [CSS px from its top left corner]. */
export const placeOn = (element: HTMLElement, event: MouseEvent): StagePoint => {
  const box = element.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
};

/**
 * A photo under fingers: it is pushed, pinched and zoomed, grows with its window, and hands on what the fingers meant.
 * @param ready called once, when the stage first has a size
 */
export function useStage(
  photo: Size,
  corners: Corners,
  onEffect: (effect: Effect) => void,
  ready?: (stage: Stage) => Stage,
): StageInHand {
  const root = useRef<HTMLDivElement>(null);
  const step = useSignal<Step | null>(null);

  const send = (event: StageEvent): void => {
    if (!step.value) return;
    const next = gesture(step.value.stage, step.value.going, event);
    step.value = next;
    next.effects?.forEach(onEffect);
  };
  const change = (how: (stage: Stage) => Stage): void => {
    const now = step.value;
    if (now) step.value = { ...now, stage: how(now.stage) };
  };
  const zoom = (factor: number, where?: StagePoint): void =>
    change((stage) => {
      const { view, size } = stage;
      return { ...stage, view: zoomedAt(view, where ?? [size.width / 2, size.height / 2], factor, photo, size) };
    });
  const fit = (points: readonly PhotoPoint[], room: Room): void =>
    change((stage) => ({ ...stage, view: viewOf(points, photo, stage.size, room) }));

  useEffect(() => {
    const element = root.current;
    if (!element) return undefined;
    const watch = new ResizeObserver(() => {
      const size = sizeOf(element);
      if (size.width === 0 || size.height === 0) return;
      const fresh = { photo, size, view: wholePhoto(photo, size), corners };
      if (step.value) send({ type: 'resize', size });
      else step.value = { stage: ready ? ready(fresh) : fresh, going: IDLE };
    });
    watch.observe(element);
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      zoom(Math.exp(-event.deltaY / 300), placeOn(element, event));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      watch.disconnect();
      element.removeEventListener('wheel', onWheel);
    };
  }, []);
  return { root, step, send, zoom, fit };
}
