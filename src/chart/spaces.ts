/**
 * Three spaces, three types, so that no place in one is taken for a place in another.
 * Photo: pixels, (0, 0) the centre of the top-left pixel, x right, y down.
 * Frame: fractions of the plot frame, u from its left to its right side, v from its bottom to its top side.
 * Sheet: pixels of the straightened picture of the frame (see `rectify.ts`), x right, y down.
 */
export type PhotoPoint = readonly [number, number] & { readonly space: 'photo' };
export type FramePoint = readonly [number, number] & { readonly space: 'frame' };
export type SheetPoint = readonly [number, number] & { readonly space: 'sheet' };

/** A point of the photo [px], of the frame [share of its sides], of the straightened sheet [px]: three spaces, never mixed. */
export const photoPoint = (x: number, y: number): PhotoPoint => [x, y] as unknown as PhotoPoint;
export const framePoint = (u: number, v: number): FramePoint => [u, v] as unknown as FramePoint;
export const sheetPoint = (x: number, y: number): SheetPoint => [x, y] as unknown as SheetPoint;

/** Corners in the contract's order: bottom-left, bottom-right, top-right, top-left of the chart (not of the photo). */
export type Corners = readonly [PhotoPoint, PhotoPoint, PhotoPoint, PhotoPoint];
