import { greyAt, type Grey } from '../../picture/raster.ts';

/** A picture turned about its middle, big enough to hold all of it, and where its places lie in the picture. */
export type TurnedView = { readonly grey: Grey; readonly toView: (x: number, y: number) => readonly [number, number] };

/** @param angle radians; what leant by this much (falling to the right) lies level afterwards */
export function turnedView(grey: Grey, angle: number): TurnedView {
  if (angle === 0) return { grey, toView: (x, y) => [x, y] };
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const width = Math.ceil(Math.abs(grey.width * cos) + Math.abs(grey.height * sin));
  const height = Math.ceil(Math.abs(grey.width * sin) + Math.abs(grey.height * cos));
  const toView = (x: number, y: number): [number, number] => {
    const [u, v] = [x - width / 2, y - height / 2];
    return [u * cos - v * sin + grey.width / 2, u * sin + v * cos + grey.height / 2];
  };
  const data = new Uint8Array(width * height);
  for (let y = 0, i = 0; y < height; y++) for (let x = 0; x < width; x++, i++) data[i] = greyAt(grey, ...toView(x, y));
  return { grey: { width, height, data }, toView };
}
