import type { Photo } from '../picture/raster.ts';

/** A plate or a sheet laid flat: x to the right as one reads, y down. Its pixels are looked up in the photo when wanted. */
export type Surface = {
  readonly width: number;
  readonly height: number;
  readonly photo: Photo;
  /** photo pixels a flat pixel is wide, about */
  readonly photoPixels: number;
  /** a place of the flat picture in the photo */
  toPhoto(x: number, y: number): readonly [number, number];
};

/** Where one line of text stands on a surface, flat pixels. */
export type TextBox = {
  readonly x0: number;
  readonly x1: number;
  /** top of the capitals and base line, in the middle of the box */
  readonly y0: number;
  readonly y1: number;
  /** how much the line falls, dy / dx */
  readonly slope: number;
  /** light letters on a dark ground */
  readonly isLight: boolean;
};
