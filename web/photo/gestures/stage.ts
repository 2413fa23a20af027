import type { CornerIndex, Corners } from '../corners.ts';
import type { PhotoPoint, Size, StagePoint, View } from '../view.ts';

/** What fingers work on. Never changed in place: every gesture answers a new stage. */
export type Stage = { photo: Size; size: Size; view: View; corners: Corners };

/** A finger, pen or mouse on the stage. */
export type Touch = { id: number; at: StagePoint };

export type StageEvent =
  | { type: 'down'; touch: Touch }
  | { type: 'move'; touch: Touch }
  | { type: 'up'; touch: Touch }
  /** the system took the touch away (a call, the phone was turned): what was done stays */
  | { type: 'interrupt'; id: number }
  /** Escape: back to where it began */
  | { type: 'cancel' }
  | { type: 'resize'; size: Size };

/** What the page has to do about it: everything else is inside the stage. */
export type Effect = { type: 'corners'; corners: Corners } | { type: 'tap'; at: PhotoPoint };

export type GestureName = keyof GestureData;

/** What each gesture remembers from its start. Positions derive from the start, so nothing drifts. */
export type GestureData = {
  idle: null;
  'pressing-handle': { touch: Touch; corner: CornerIndex; start: Stage };
  'dragging-handle': { touch: Touch; corner: CornerIndex; start: Stage; from: StagePoint; handle: PhotoPoint };
  'pressing-paper': { touch: Touch; start: Stage };
  panning: { touch: Touch; start: Stage; from: StagePoint };
  pinching: { first: Touch; second: Touch; start: Stage; from: readonly [StagePoint, StagePoint] };
};

/** A gesture under way, with what it remembers. */
export type Going = { [N in GestureName]: { name: N; data: GestureData[N] } }[GestureName];

export type Step = { stage: Stage; going: Going; effects?: Effect[] };

/** One gesture: how it answers each event. */
export type Gesture<N extends GestureName> = (event: StageEvent, data: GestureData[N], stage: Stage) => Step;

export const IDLE: Going = { name: 'idle', data: null };

/** A press turns into a drag once it has moved this far [CSS px]: a resting thumb trembles less. */
export const DRAG_FROM_PX = 5;
/** A fingertip takes hold of a handle within this distance [CSS px], however far one has zoomed. */
export const HANDLE_REACH_PX = 30;
