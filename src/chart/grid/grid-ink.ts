import { middleOf } from '../../numeric/middle-of.ts';
import type { GridLine, LineDirection } from './grid-lines.ts';
import type { Sheet } from '../sheet.ts';

/** Ink that the grid put on each pixel of the sheet, mean of the channels, 0 where there is no grid line. */
export type GridInk = { readonly width: number; readonly height: number; readonly data: Uint8Array };

const HALF = 3;

/**
 * Where the grid's own ink lies and how much of it: along each line the usual (median) cross-section, stretch by
 * stretch, so that a curve that crosses or touches a line is not mistaken for part of it.
 */
export function gridInkOf(sheet: Sheet, upright: readonly GridLine[], level: readonly GridLine[]): GridInk {
  const data = new Uint8Array(sheet.width * sheet.height);
  for (const line of upright) lay(sheet, line, 'upright', data);
  for (const line of level) lay(sheet, line, 'level', data);
  return { width: sheet.width, height: sheet.height, data };
}

function lay(sheet: Sheet, line: GridLine, direction: LineDirection, data: Uint8Array): void {
  const { width, darkness, margin, frameWidth, frameHeight } = sheet;
  const step = direction === 'upright' ? 1 : width;
  const stride = direction === 'upright' ? width : 1;
  const end = margin + (direction === 'upright' ? frameHeight : frameWidth);
  const length = end - margin;
  const stretches = Math.max(4, Math.round(length / 80));
  const start = (k: number) => Math.round(margin + (k * length) / stretches);
  const places = new Int32Array(Math.ceil(end) + 1);
  for (let a = start(0); a < start(stretches); a++) places[a] = Math.round(acrossAt(line, a));
  for (let d = -HALF; d <= HALF; d++) {
    const usual = Array.from({ length: stretches }, (_, k) => usualInk(k, d));
    // a curve running along the line for a whole stretch must not pass for the line, nor a label that covers a stretch
    // hide that bits of the line are left in it: no stretch far above the rest, and none far below
    const middle = middleOf(usual);
    const ceiling = 1.3 * middle + 4;
    for (let k = 0; k < stretches; k++) {
      const ink = Math.max(0.8 * middle, Math.min(ceiling, usual[k]!));
      if (ink < 4) continue;
      for (let a = start(k); a < start(k + 1); a++) {
        const i = a * stride + (places[a]! + d) * step;
        if (ink > data[i]!) data[i] = ink;
      }
    }
  }

  function usualInk(k: number, d: number): number {
    counts.fill(0);
    for (let a = start(k); a < start(k + 1); a++) counts[darkness[a * stride + (places[a]! + d) * step]!]!++;
    let left = 0.3 * (start(k + 1) - start(k));
    let level = 255;
    while (level > 0 && (left -= counts[level]!) > 0) level--;
    return level;
  }
}

const counts = new Uint16Array(256);

/** Place of the line across, between the strips it was seen in. */
function acrossAt({ along, across }: GridLine, at: number): number {
  let k = 0;
  while (k + 1 < along.length && along[k + 1]! < at) k++;
  if (k + 1 >= along.length || at <= along[0]!) return at <= along[0]! ? across[0]! : across.at(-1)!;
  const f = (at - along[k]!) / (along[k + 1]! - along[k]!);
  return across[k]! + f * (across[k + 1]! - across[k]!);
}
