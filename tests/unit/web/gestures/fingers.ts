import { waitingCorners } from '../../../../web/photo/corners.ts';
import {
  gesture,
  IDLE,
  type Effect,
  type Going,
  type Stage,
  type StageEvent,
} from '../../../../web/photo/gestures/index.ts';
import { wholePhoto, type StagePoint } from '../../../../web/photo/view.ts';

export const PHOTO = { width: 3000, height: 4000 };
export const PORTRAIT = { width: 390, height: 420 };
export const LANDSCAPE = { width: 460, height: 240 };

export const startStage = (): Stage => ({
  photo: PHOTO,
  size: PORTRAIT,
  view: wholePhoto(PHOTO, PORTRAIT),
  corners: waitingCorners(PHOTO),
});

/** Fingers on a stage without a browser: remembers the gestures passed through and what the page was told to do. */
export function fingers(stage: Stage = startStage()) {
  let now: { stage: Stage; going: Going } = { stage, going: IDLE };
  const effects: Effect[] = [];
  const path: string[] = [];
  const send = (event: StageEvent): void => {
    const next = gesture(now.stage, now.going, event);
    effects.push(...(next.effects ?? []));
    if (next.going.name !== now.going.name) path.push(next.going.name);
    now = next;
  };
  return {
    down: (x: number, y: number, id = 1) => send({ type: 'down', touch: { id, at: [x, y] } }),
    move: (x: number, y: number, id = 1) => send({ type: 'move', touch: { id, at: [x, y] } }),
    up: (x: number, y: number, id = 1) => send({ type: 'up', touch: { id, at: [x, y] } }),
    interrupt: (id = 1) => send({ type: 'interrupt', id }),
    escape: () => send({ type: 'cancel' }),
    turn: (size: Stage['size']) => send({ type: 'resize', size }),
    get stage(): Stage {
      return now.stage;
    },
    get gesture(): string {
      return now.going.name;
    },
    effects,
    path,
  };
}

/** Where a corner stands on the stage. */
export const cornerAt = (stage: Stage, index: number): StagePoint => {
  const [x, y] = stage.corners[index as 0];
  return [x * stage.view.scale + stage.view.x, y * stage.view.scale + stage.view.y];
};
