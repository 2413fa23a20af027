import { distance, toPhoto } from '../view.ts';
import { resized } from './idle.ts';
import { startPan } from './panning.ts';
import { startPinch } from './pinching.ts';
import { DRAG_FROM_PX, IDLE, type Gesture } from './stage.ts';

/** A finger rests on the photo: lifted again it was a tap on the curve, moved it pans. */
export const pressingPaper: Gesture<'pressing-paper'> = (event, data, stage) => {
  const stay = { stage, going: { name: 'pressing-paper' as const, data } };
  switch (event.type) {
    case 'move':
      if (event.touch.id !== data.touch.id || distance(event.touch.at, data.touch.at) < DRAG_FROM_PX) return stay;
      return startPan(event.touch, data, stage);
    case 'down':
      return startPinch(data.touch, event.touch, stage);
    case 'up':
      if (event.touch.id !== data.touch.id) return stay;
      return { stage, going: IDLE, effects: [{ type: 'tap', at: toPhoto(stage.view, data.touch.at) }] };
    case 'interrupt':
      return event.id === data.touch.id ? { stage, going: IDLE } : stay;
    case 'cancel':
      return { stage, going: IDLE };
    case 'resize':
      return { stage: resized(stage, event.size), going: IDLE };
  }
};
