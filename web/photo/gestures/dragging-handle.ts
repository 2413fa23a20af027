import { withCorner, type CornerIndex } from '../corners.ts';
import type { PhotoPoint } from '../view.ts';
import { resized } from './idle.ts';
import { startPinch } from './pinching.ts';
import { IDLE, type Gesture, type GestureData, type Stage, type Step, type Touch } from './stage.ts';

/**
 * A corner follows a finger. The corner moves by as much as the finger has, from where it was: a fingertip put down
 * beside the corner does not make it jump.
 */
export const draggingHandle: Gesture<'dragging-handle'> = (event, data, stage) => {
  const stay = { stage, going: { name: 'dragging-handle' as const, data } };
  switch (event.type) {
    case 'move':
      if (event.touch.id !== data.touch.id) return stay;
      return {
        stage: moved(stage, data, event.touch),
        going: { name: 'dragging-handle', data: { ...data, touch: event.touch } },
      };
    case 'up':
      if (event.touch.id !== data.touch.id) return stay;
      return finished(moved(stage, data, event.touch));
    case 'interrupt':
      return event.id === data.touch.id ? finished(stage) : stay;
    case 'cancel':
      return { stage: { ...stage, corners: data.start.corners }, going: IDLE };
    case 'down':
      return startPinch(data.touch, event.touch, { ...stage, corners: data.start.corners });
    case 'resize':
      return takenUpAgain(resized(stage, event.size), data);
  }
};

/** Takes hold of a corner that a finger had pressed. */
export function dragging(touch: Touch, from: GestureData['pressing-handle'], stage: Stage): Step {
  const handle = stage.corners[from.corner];
  const data = { touch, corner: from.corner, start: from.start, from: from.touch.at, handle };
  return { stage: moved(stage, data, touch), going: { name: 'dragging-handle', data } };
}

function moved(
  stage: Stage,
  data: { corner: CornerIndex; from: Touch['at']; handle: PhotoPoint },
  touch: Touch,
): Stage {
  const { scale } = stage.view;
  const to: PhotoPoint = [
    data.handle[0] + (touch.at[0] - data.from[0]) / scale,
    data.handle[1] + (touch.at[1] - data.from[1]) / scale,
  ];
  return { ...stage, corners: withCorner(stage.corners, data.corner, to, stage.photo) };
}

const finished = (stage: Stage): Step => ({
  stage,
  going: IDLE,
  effects: [{ type: 'corners', corners: stage.corners }],
});

/** The phone was turned: the corner stays where it was dragged to, and the finger goes on from there. */
function takenUpAgain(stage: Stage, data: GestureData['dragging-handle']): Step {
  const start = { ...data.start, size: stage.size, view: stage.view };
  return {
    stage,
    going: {
      name: 'dragging-handle',
      data: { ...data, start, from: data.touch.at, handle: stage.corners[data.corner] },
    },
    effects: [{ type: 'corners', corners: stage.corners }],
  };
}
