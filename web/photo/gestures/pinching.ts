import { distance, keptOnStage, middle, toPhoto } from '../view.ts';
import { resized } from './idle.ts';
import { IDLE, type Gesture, type GestureData, type Stage, type Step, type Touch } from './stage.ts';

/** Two fingers hold two places of the photo: it is stretched and pushed so that both stay under them. */
export const pinching: Gesture<'pinching'> = (event, data, stage) => {
  const stay = { stage, going: { name: 'pinching' as const, data } };
  switch (event.type) {
    case 'move': {
      const first = event.touch.id === data.first.id ? event.touch : data.first;
      const second = event.touch.id === data.second.id ? event.touch : data.second;
      const next = { ...data, first, second };
      return { stage: stretched(stage, next), going: { name: 'pinching', data: next } };
    }
    case 'up':
      return lifted(event.touch.id, data, stage) ?? stay;
    case 'interrupt':
      return lifted(event.id, data, stage) ?? stay;
    case 'cancel':
      return { stage: { ...stage, view: data.start.view }, going: IDLE };
    case 'resize':
      return { stage: resized(stage, event.size), going: IDLE };
    case 'down':
      return stay;
  }
};

export const startPinch = (first: Touch, second: Touch, stage: Stage): Step => ({
  stage,
  going: { name: 'pinching', data: { first, second, start: stage, from: [first.at, second.at] } },
});

/** One finger stays: it goes on pushing the photo from where it is. */
function lifted(id: number, data: GestureData['pinching'], stage: Stage): Step | null {
  if (id !== data.first.id && id !== data.second.id) return null;
  const left = id === data.first.id ? data.second : data.first;
  return { stage, going: { name: 'panning', data: { touch: left, start: stage, from: left.at } } };
}

function stretched(stage: Stage, { first, second, start, from }: GestureData['pinching']): Stage {
  const factor = distance(first.at, second.at) / Math.max(1, distance(from[0], from[1]));
  const anchor = toPhoto(start.view, middle(from[0], from[1]));
  const now = middle(first.at, second.at);
  const bare = keptOnStage({ ...start.view, scale: start.view.scale * factor }, stage.photo, stage.size);
  const view = { scale: bare.scale, x: now[0] - anchor[0] * bare.scale, y: now[1] - anchor[1] * bare.scale };
  return { ...stage, view: keptOnStage(view, stage.photo, stage.size) };
}
