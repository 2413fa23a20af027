import { draggingHandle } from './dragging-handle.ts';
import { idle } from './idle.ts';
import { panning } from './panning.ts';
import { pinching } from './pinching.ts';
import { pressingHandle } from './pressing-handle.ts';
import { pressingPaper } from './pressing-paper.ts';
import { type Gesture, type GestureName, type Going, type Stage, type StageEvent, type Step } from './stage.ts';

export { IDLE, type Effect, type Going, type Stage, type StageEvent, type Step } from './stage.ts';

/** Every gesture by name; a new one is one file and one line here. */
const GESTURES: { [N in GestureName]: Gesture<N> } = {
  idle,
  'pressing-handle': pressingHandle,
  'dragging-handle': draggingHandle,
  'pressing-paper': pressingPaper,
  panning,
  pinching,
};

/** One event on the stage: the new stage, the gesture that goes on, and what the page has to do. */
export function gesture(stage: Stage, going: Going, event: StageEvent): Step {
  const answer = GESTURES[going.name] as (event: StageEvent, data: unknown, stage: Stage) => Step;
  return answer(event, going.data, stage);
}
