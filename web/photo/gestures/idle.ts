import { distance, toStage, turnedView } from '../view.ts';
import type { CornerIndex } from '../corners.ts';
import { HANDLE_REACH_PX, IDLE, type Gesture, type Stage, type Touch } from './stage.ts';

/** No finger on the photo. A touch near a corner takes hold of it, any other presses the paper. */
export const idle: Gesture<'idle'> = (event, _data, stage) => {
  switch (event.type) {
    case 'down': {
      const corner = cornerUnder(stage, event.touch);
      return corner === null
        ? { stage, going: { name: 'pressing-paper', data: { touch: event.touch, start: stage } } }
        : { stage, going: { name: 'pressing-handle', data: { touch: event.touch, corner, start: stage } } };
    }
    case 'resize':
      return { stage: resized(stage, event.size), going: IDLE };
    default:
      return { stage, going: IDLE };
  }
};

/** The nearest corner within a fingertip's reach. */
export function cornerUnder(stage: Stage, touch: Touch): CornerIndex | null {
  let best: CornerIndex | null = null;
  let nearest = HANDLE_REACH_PX;
  stage.corners.forEach((corner, index) => {
    const away = distance(toStage(stage.view, corner), touch.at);
    if (away >= nearest) return;
    nearest = away;
    best = index as CornerIndex;
  });
  return best;
}

export const resized = (stage: Stage, size: Stage['size']): Stage => ({
  ...stage,
  size,
  view: turnedView(stage.view, stage.photo, stage.size, size),
});
