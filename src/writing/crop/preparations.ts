import type { WordCrop } from '../../words/word-reader.ts';
import { blurred, fieldLike, meanAround, quantile, type Field } from './filters.ts';
import { heightOf, lightingOf } from './relief.ts';
import { BORDER_PX, CAPITAL_PX, type Sample } from './sample-box.ts';

/**
 * Ways of making a sample readable: darkness from 0 (ground) to 1 (ink). Each errs in its own way, and what several
 * agree on is more likely there. None is ever made black and white: the reader was taught on grey.
 */
const WAYS = {
  /** the whole range of the sample's brightness */
  stretched: (s: Sample) => darkness(s, quantile(s.values, 0.98), quantile(s.values, 0.02)),
  /** shades and gradients of the ground taken away */
  levelled: (s: Sample) => levelled(s),
  /** without grain; strokes of dots join */
  softened: (s: Sample) => blurred(levelled(s), 0.055 * CAPITAL_PX),
  /** dots punched side by side become strokes */
  joined: (s: Sample) => stretch(blurred(levelled(s), 0.085 * CAPITAL_PX)),
  /** as much contrast everywhere */
  evened: (s: Sample) => evened(s),
  /** height of a stamped or cast relief */
  raised: (s: Sample) => raised(s, 0.02, 0.6),
  /** the same, softer */
  molten: (s: Sample) => raised(s, 0.045, 0.45),
  /** the strokes' shaded parts only, thinner */
  sharpened: (s: Sample) => sharpened(s),
} satisfies Record<string, (sample: Sample) => Field>;

export type Preparation = keyof typeof WAYS;

/**
 * Turns of reading: every line is read in the first ways, and as long as these do not agree surely, in the next.
 * What looks like a relief may be print with a bright edge, so that one way of print is always among them.
 */
export const WAYS_TO_READ: Record<'print' | 'relief', readonly (readonly Preparation[])[]> = {
  print: [
    ['levelled', 'stretched'],
    ['softened', 'evened'],
    ['sharpened', 'joined'],
  ],
  relief: [
    ['levelled', 'raised'],
    ['softened', 'molten'],
    ['evened', 'joined'],
  ],
};

/** Makes a crop for the reader: prepared, what is foreign left out, with a white border. */
export function prepare(sample: Sample, way: Preparation): WordCrop {
  const ink = WAYS[way](sample);
  const width = sample.width + 2 * BORDER_PX;
  const height = sample.height + 2 * BORDER_PX;
  const grey = new Uint8Array(width * height).fill(255);
  for (let j = 0, k = 0; j < sample.height; j++) {
    const row = (j + BORDER_PX) * width + BORDER_PX;
    // letters stop before the upper and lower edge: what stands there fades into the border
    const fade = Math.min(1, (Math.min(j, sample.height - 1 - j) + 0.5) / (0.1 * CAPITAL_PX));
    for (let i = 0; i < sample.width; i++, k++)
      if (!sample.foreign[k]) grey[row + i] = 255 - Math.round(255 * fade * Math.min(1, Math.max(0, ink.values[k]!)));
  }
  return { grey, width, height };
}

const darkness = (field: Field, ground: number, ink: number): Field =>
  fieldLike(field, (k) => (ground - field.values[k]!) / Math.max(12, ground - ink));

/** What blurring took of the darkness is given back. */
function stretch(field: Field): Field {
  const most = Math.max(0.2, quantile(field.values, 0.97));
  return fieldLike(field, (k) => (1.1 * field.values[k]!) / most - 0.1);
}

/** Ground: the bright part of a wide neighbourhood, found by leaving the dark part out of the mean twice. */
function groundOf(s: Field): Field {
  const reach = Math.round(0.8 * CAPITAL_PX);
  let ground = meanAround(s, reach);
  for (let turn = 0; turn < 2; turn++) {
    const last = ground.values;
    ground = meanAround(
      fieldLike(s, (k) => Math.max(s.values[k]!, last[k]!)),
      reach,
    );
  }
  return ground;
}

function levelled(s: Sample): Field {
  const ground = groundOf(s);
  const depth = fieldLike(s, (k) => ground.values[k]! - s.values[k]!);
  const most = Math.max(12, quantile(depth.values, 0.97));
  return fieldLike(s, (k) => (1.1 * depth.values[k]!) / most - 0.1);
}

function evened(s: Sample): Field {
  const { mean, deviation } = statistics(s, Math.round(0.7 * CAPITAL_PX));
  return fieldLike(s, (k) => 0.35 + (0.45 * (mean.values[k]! - s.values[k]!)) / Math.max(6, deviation.values[k]!));
}

function raised(s: Sample, softness: number, memory: number): Field {
  const angle = s.light ?? lightingOf(s, CAPITAL_PX).angle;
  const height = heightOf(blurred(s, softness * CAPITAL_PX), CAPITAL_PX, angle, memory);
  const least = quantile(height.values, 0.45);
  const most = quantile(height.values, 0.96);
  return fieldLike(s, (k) => (height.values[k]! - least) / Math.max(4, most - least));
}

function sharpened(s: Sample): Field {
  const soft = blurred(s, 0.16 * CAPITAL_PX);
  const flat = levelled({ ...s, values: fieldLike(s, (k) => 2 * s.values[k]! - soft.values[k]!).values });
  return blurred(flat, 0.03 * CAPITAL_PX);
}

/** Mean and standard deviation around each pixel. @param reach pixels */
export function statistics(s: Field, reach: number): { mean: Field; deviation: Field } {
  const mean = meanAround(s, reach);
  const squares = meanAround(
    fieldLike(s, (k) => s.values[k]! * s.values[k]!),
    reach,
  );
  const deviation = fieldLike(s, (k) => Math.sqrt(Math.max(0, squares.values[k]! - mean.values[k]! ** 2)));
  return { mean, deviation };
}
