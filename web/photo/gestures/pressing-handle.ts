import { distance } from '../view.ts';
import { resized } from './idle.ts';
import { dragging } from './dragging-handle.ts';
import { startPinch } from './pinching.ts';
import { DRAG_FROM_PX, IDLE, type Gesture } from './stage.ts';

/** A finger rests on a corner but has not moved yet: the lens is up, nothing has changed. */
export const pressingHandle: Gesture<'pressing-handle'> = (event, data, stage) => {
  const stay = { stage, going: { name: 'pressing-handle' as const, data } };
  switch (event.type) {
    case 'move':
      if (event.touch.id !== data.touch.id || distance(event.touch.at, data.touch.at) < DRAG_FROM_PX) return stay;
      return dragging(event.touch, data, stage);
    case 'down':
      return startPinch(data.touch, event.touch, stage);
    case 'up':
      return event.touch.id === data.touch.id ? { stage, going: IDLE } : stay;
    case 'interrupt':
      return event.id === data.touch.id ? { stage, going: IDLE } : stay;
    case 'cancel':
      return { stage, going: IDLE };
    case 'resize':
      return { stage: resized(stage, event.size), going: IDLE };
  }
};
