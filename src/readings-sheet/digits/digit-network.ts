import { digitFeatures, FEATURE_COUNT } from './digit-features.ts';
import type { InkPatch } from './ink-patch.ts';

/** Ten digits, and last whatever is none. */
export const CLASSES = 11;
export const NO_DIGIT = 10;

/**
 * Weights in one byte each: every row's bytes times its scale, the bias last in a row. `temperature` divides the scores
 * before they become probabilities; it was fitted on digits the network never saw.
 * Source: C. Guo, G. Pleiss, Y. Sun, K. Weinberger, On calibration of modern neural networks (2017).
 */
export type DigitWeights = {
  readonly hidden: number;
  readonly temperature: number;
  /** scales of the hidden rows, then of the rows out */
  readonly scales: readonly number[];
  /** bytes of the hidden rows, then of the rows out, base 64 */
  readonly bytes: string;
};

/** How likely a piece of ink is each digit; the last of the CLASSES numbers is that it is none. They add up to 1. */
export type DigitReader = (patch: InkPatch) => Float32Array;

/** Unpacks the weights. @throws RangeError where their number does not fit the network */
export function createDigitReader({ hidden, temperature, scales, bytes }: DigitWeights): DigitReader {
  const raw = bytesOf(bytes);
  const wanted = hidden * (FEATURE_COUNT + 1) + CLASSES * (hidden + 1);
  if (raw.length !== wanted || scales.length !== hidden + CLASSES)
    throw new RangeError(`digit weights: expected ${wanted} bytes, received ${raw.length}`);
  const first = layerOf(raw, 0, FEATURE_COUNT, scales.slice(0, hidden));
  const second = layerOf(raw, hidden * (FEATURE_COUNT + 1), hidden, scales.slice(hidden));
  const active = new Float32Array(hidden);
  return (patch) => {
    const likely = new Float32Array(CLASSES);
    const features = digitFeatures(patch);
    if (!features) {
      likely[NO_DIGIT] = 1;
      return likely;
    }
    for (let h = 0; h < hidden; h++) active[h] = Math.max(0, rowAt(first, h, features, FEATURE_COUNT));
    for (let c = 0; c < CLASSES; c++) likely[c] = rowAt(second, c, active, hidden) / temperature;
    return toShares(likely);
  };
}

function layerOf(raw: Int8Array, from: number, inputs: number, scales: readonly number[]): Float32Array {
  const row = inputs + 1;
  return Float32Array.from({ length: scales.length * row }, (_, i) => raw[from + i]! * scales[Math.floor(i / row)]!);
}

function rowAt(layer: Float32Array, row: number, x: Float32Array, length: number): number {
  const from = row * (length + 1);
  let sum = layer[from + length]!;
  for (let i = 0; i < length; i++) sum += layer[from + i]! * x[i]!;
  return sum;
}

/** Scores to shares of one, in place. */
function toShares(scores: Float32Array): Float32Array {
  const most = Math.max(...scores);
  let total = 0;
  for (let c = 0; c < scores.length; c++) total += scores[c] = Math.exp(scores[c]! - most);
  for (let c = 0; c < scores.length; c++) scores[c]! /= total;
  return scores;
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Base 64 to signed bytes. Source: RFC 4648 §4. */
function bytesOf(text: string): Int8Array {
  const clean = text.replaceAll(/[^A-Za-z0-9+/]/g, '');
  const out = new Int8Array(Math.floor((clean.length * 3) / 4));
  let [held, bits, at] = [0, 0, 0];
  for (const letter of clean) {
    held = ((held << 6) | ALPHABET.indexOf(letter)) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      out[at++] = (held >> bits) & 0xff;
    }
  }
  return out;
}
