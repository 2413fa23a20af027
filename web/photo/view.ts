/** A point in the pixels of the photo as the server returned it: upright, origin top left. */
export type PhotoPoint = readonly [x: number, y: number];
/** A point on the stage, in CSS pixels from its top left corner. */
export type StagePoint = readonly [x: number, y: number];
export type Size = { width: number; height: number };

/** How the photo lies on the stage: stage = photo × scale + (x, y). Only this file turns one into the other. */
export type View = { scale: number; x: number; y: number };

export const toStage = (view: View, [x, y]: PhotoPoint): StagePoint => [
  x * view.scale + view.x,
  y * view.scale + view.y,
];
export const toPhoto = (view: View, [x, y]: StagePoint): PhotoPoint => [
  (x - view.x) / view.scale,
  (y - view.y) / view.scale,
];

/** The whole photo on the stage, centred. */
export function wholePhoto(photo: Size, stage: Size): View {
  const scale = Math.min(stage.width / photo.width, stage.height / photo.height);
  return { scale, x: (stage.width - photo.width * scale) / 2, y: (stage.height - photo.height * scale) / 2 };
}

/** A screen pixel shows a photo pixel eight times enlarged at most. */
const CLOSEST = 8;

/** The view kept within reason: never smaller than the whole photo, never so far off that the photo is lost from sight. */
export function keptOnStage(view: View, photo: Size, stage: Size): View {
  const whole = wholePhoto(photo, stage).scale;
  const scale = Math.min(CLOSEST, Math.max(whole, view.scale));
  return {
    scale,
    x: kept(view.x, photo.width * scale, stage.width),
    y: kept(view.y, photo.height * scale, stage.height),
  };
}

/** A side longer than the stage covers it; a shorter one stays in its middle. */
const kept = (at: number, length: number, room: number): number =>
  length <= room ? (room - length) / 2 : Math.min(0, Math.max(room - length, at));

/** Zooms by a factor so that the photo point under `at` stays there. */
export function zoomedAt(view: View, at: StagePoint, factor: number, photo: Size, stage: Size): View {
  const whole = wholePhoto(photo, stage).scale;
  const scale = Math.min(CLOSEST, Math.max(whole, view.scale * factor));
  const [px, py] = toPhoto(view, at);
  return keptOnStage({ scale, x: at[0] - px * scale, y: at[1] - py * scale }, photo, stage);
}

/** The same middle of the photo, at the same zoom relative to the whole, on a stage of another size (a turned phone). */
export function turnedView(view: View, photo: Size, from: Size, to: Size): View {
  const zoom = view.scale / wholePhoto(photo, from).scale;
  const [mx, my] = toPhoto(view, [from.width / 2, from.height / 2]);
  const scale = wholePhoto(photo, to).scale * zoom;
  return keptOnStage({ scale, x: to.width / 2 - mx * scale, y: to.height / 2 - my * scale }, photo, to);
}

export type Room = { sides: number; top: number; bottom: number };

/** The view in which these points fill the stage, with room around them [CSS px]. */
export function viewOf(points: readonly PhotoPoint[], photo: Size, stage: Size, room: Room): View {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const free = { width: stage.width - 2 * room.sides, height: stage.height - room.top - room.bottom };
  const scale = Math.min(free.width / (right - left), free.height / (bottom - top));
  const view = {
    scale,
    x: stage.width / 2 - ((left + right) / 2) * scale,
    y: room.top + free.height / 2 - ((top + bottom) / 2) * scale,
  };
  return keptOnStage(view, photo, stage);
}

export const distance = (a: StagePoint, b: StagePoint): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
export const middle = (a: StagePoint, b: StagePoint): StagePoint => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
