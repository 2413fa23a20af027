/** A point in the pixels of the photo as the server returned it: upright, origin top left. */
export type PhotoPoint = readonly [x: number, y: number];
/** A point on the stage, in CSS pixels from its top left corner. */
export type StagePoint = readonly [x: number, y: number];
