import { keptOnStage } from '../view.ts';
import { resized } from './idle.ts';
import { startPinch } from './pinching.ts';
import { IDLE, type Gesture, type GestureData, type Stage, type Step, type Touch } from './stage.ts';

/** One finger pushes the photo about. */
export const panning: Gesture<'panning'> = (event, data, stage) => {
  const stay = { stage, going: { name: 'panning' as const, data } };
  switch (event.type) {
    case 'move':
      if (event.touch.id !== data.touch.id) return stay;
      return {
        stage: pushed(stage, data, event.touch),
        going: { name: 'panning', data: { ...data, touch: event.touch } },
      };
    case 'down':
      return startPinch(data.touch, event.touch, stage);
    case 'up':
      return event.touch.id === data.touch.id ? { stage: pushed(stage, data, event.touch), going: IDLE } : stay;
    case 'interrupt':
      return event.id === data.touch.id ? { stage, going: IDLE } : stay;
    case 'cancel':
      return { stage: { ...stage, view: data.start.view }, going: IDLE };
    case 'resize':
      return { stage: resized(stage, event.size), going: IDLE };
  }
};

export function startPan(touch: Touch, from: GestureData['pressing-paper'], stage: Stage): Step {
  const data = { touch, start: from.start, from: from.touch.at };
  return { stage: pushed(stage, data, touch), going: { name: 'panning', data } };
}

function pushed(stage: Stage, data: GestureData['panning'], touch: Touch): Stage {
  const { view } = data.start;
  const there = { ...view, x: view.x + touch.at[0] - data.from[0], y: view.y + touch.at[1] - data.from[1] };
  return { ...stage, view: keptOnStage(there, stage.photo, stage.size) };
}
