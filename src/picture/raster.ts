/** A picture as it was decoded: three bytes (red, green, blue) a pixel, row by row from the top. */
export type Raster = { readonly width: number; readonly height: number; readonly rgb: Uint8Array };

/** Brightness of a picture, one byte a pixel. */
export type Grey = { readonly width: number; readonly height: number; readonly data: Uint8Array };

/**
 * A photo with what every reading of it needs: its brightness, and itself at half size (four pixels averaged), which
 * is what a chart bigger than the working picture is sampled from.
 */
export type Photo = { readonly full: Raster; readonly half: Raster; readonly grey: Grey; readonly halfGrey: Grey };

/** Makes a photo ready for reading. @param full at least 2 × 2 pixels, else RangeError */
export function preparePhoto(full: Raster): Photo {
  if (full.width < 2 || full.height < 2)
    throw new RangeError(`photo: expected at least 2 x 2 pixels, received ${full.width} x ${full.height}`);
  const half = halve(full);
  return { full, half, grey: brightness(full), halfGrey: brightness(half) };
}

function brightness({ width, height, rgb }: Raster): Grey {
  const data = new Uint8Array(width * height);
  for (let i = 0, j = 0; i < data.length; i++, j += 3) data[i] = (rgb[j]! * 3 + rgb[j + 1]! * 4 + rgb[j + 2]!) >> 3;
  return { width, height, data };
}

function halve({ width, height, rgb }: Raster): Raster {
  const w = width >> 1;
  const h = height >> 1;
  const out = new Uint8Array(w * h * 3);
  const row = width * 3;
  for (let y = 0; y < h; y++) {
    let i = 2 * y * row;
    let j = i + row;
    let o = y * w * 3;
    for (let x = 0; x < w; x++, i += 6, j += 6, o += 3) {
      out[o] = (rgb[i]! + rgb[i + 3]! + rgb[j]! + rgb[j + 3]! + 2) >> 2;
      out[o + 1] = (rgb[i + 1]! + rgb[i + 4]! + rgb[j + 1]! + rgb[j + 4]! + 2) >> 2;
      out[o + 2] = (rgb[i + 2]! + rgb[i + 5]! + rgb[j + 2]! + rgb[j + 5]! + 2) >> 2;
    }
  }
  return { width: w, height: h, rgb: out };
}

/** Brightness 0..255 between pixels, bilinear; the edge pixels go on for ever outside. */
export function greyAt({ width, height, data }: Grey, x: number, y: number): number {
  const cx = x < 0 ? 0 : x > width - 1.001 ? width - 1.001 : x;
  const cy = y < 0 ? 0 : y > height - 1.001 ? height - 1.001 : y;
  const ix = cx | 0;
  const iy = cy | 0;
  const fx = cx - ix;
  const fy = cy - iy;
  const i = iy * width + ix;
  const top = data[i]! + (data[i + 1]! - data[i]!) * fx;
  const bottom = data[i + width]! + (data[i + width + 1]! - data[i + width]!) * fx;
  return top + (bottom - top) * fy;
}
