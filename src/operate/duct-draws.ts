import { DOUBT_KINDS } from '../duct/index.ts';
import { normalDeviates } from '../numeric/deviates.ts';

/** Errors of the ducts, one set per draw: the same for every blower, gate plan and remedy. */
export type DuctDraws = { kinds: Float64Array[]; sections: Float64Array[] };

const DUCT_SEED = 2;

/** @param sections number of sections in the job; one more is drawn for the run behind the blower */
export function ductDraws(count: number, sections: number): DuctDraws {
  const kinds = DOUBT_KINDS.length;
  const width = kinds + sections + 1;
  const all = normalDeviates(count, width, DUCT_SEED);
  const row = (d: number, from: number, to: number) => all.subarray(d * width + from, d * width + to);
  return {
    kinds: Array.from({ length: count }, (_, d) => row(d, 0, kinds)),
    sections: Array.from({ length: count }, (_, d) => row(d, kinds, width)),
  };
}

/** Draws per case: enough for a chance to a point or better; fewer where a shop has so many sections that time would run out. */
export const drawCount = (sections: number): number => (sections > 200 ? 256 : 1024);
