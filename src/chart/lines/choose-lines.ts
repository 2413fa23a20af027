/** A way a line may run, and which of the pieces of stroke it explains. */
export type Candidate = {
  /** numbers of the pieces it runs along */
  readonly explains: readonly number[];
  /** what speaks against it in itself, in pieces: a kink, a change from dashes to a solid line */
  readonly fault: number;
};

/** What a line must explain to be worth having, in pieces. */
const LINE_COST = 3;
/** A piece explained by two lines: they may meet there, but one of them may have strayed. */
const TWICE_COST = 0.3;
const MOST_ROUNDS = 200;

/**
 * The set of ways that together explains the pieces best: each piece once, with few lines. Found by adding, leaving out
 * and exchanging one at a time while that helps, from each way as a start.
 * @param pieces how many pieces there are
 * @param alike whether two candidates are much the same way
 * @returns indices of the chosen candidates, how much worse the best set without each of them is, and which one takes
 *          its place there
 */
export function chooseLines(
  candidates: readonly Candidate[],
  pieces: number,
  alike: (a: number, b: number) => boolean,
): { index: number; margin: number; instead: number | null }[] {
  let best: Chosen = { worth: 0, chosen: [] };
  candidates.forEach((_, start) => {
    const set = improved(candidates, pieces, [start]);
    if (set.worth > best.worth + 1e-9) best = set;
  });
  for (let round = 0; ; round++) {
    const margins = best.chosen.map((index) => {
      const kept = best.chosen.filter((k) => k !== index);
      const isBanned = candidates.map((_, k) => k === index || alike(k, index));
      let other: Chosen = improved(candidates, pieces, kept, isBanned);
      candidates.forEach((_, start) => {
        if (isBanned[start] || best.chosen.includes(start)) return;
        const set = improved(candidates, pieces, [...kept, start], isBanned);
        if (set.worth > other.worth) other = set;
      });
      return { index, other };
    });
    // what was found on the way may be better still
    const better = margins.reduce((m, { other }) => (other.worth > m.worth + 1e-9 ? other : m), best);
    if (better !== best && round < MOST_RESTARTS) {
      best = improved(candidates, pieces, better.chosen);
      continue;
    }
    const { chosen, worth } = best;
    return margins.map(({ index, other }) => ({
      index,
      margin: worth - other.worth,
      instead: other.chosen.find((k) => !chosen.includes(k)) ?? null,
    }));
  }
}

const MOST_RESTARTS = 6;

type Chosen = { worth: number; chosen: number[] };

function improved(
  candidates: readonly Candidate[],
  pieces: number,
  start: readonly number[],
  isBanned: readonly boolean[] = [],
): Chosen {
  const times = new Uint8Array(pieces);
  const chosen: number[] = [];
  let worth = 0;
  const gain = (k: number, sign: 1 | -1): number => {
    const { explains, fault } = candidates[k]!;
    let sum = -sign * (fault + LINE_COST);
    for (const p of explains) {
      const before = times[p]!;
      sum += pieceWorth(before + sign) - pieceWorth(before);
    }
    return sum;
  };
  const apply = (k: number, sign: 1 | -1) => {
    for (const p of candidates[k]!.explains) times[p]! += sign;
    if (sign === 1) chosen.push(k);
    else chosen.splice(chosen.indexOf(k), 1);
  };
  for (const k of start) {
    worth += gain(k, 1);
    apply(k, 1);
  }
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let best: { gain: number; out: number; in: number } = { gain: 1e-6, out: -1, in: -1 };
    const consider = (out: number, into: number, g: number) => {
      if (g > best.gain) best = { gain: g, out, in: into };
    };
    candidates.forEach((_, k) => {
      if (!chosen.includes(k) && !isBanned[k]) consider(-1, k, gain(k, 1));
    });
    for (const out of Array.from(chosen)) {
      const left = gain(out, -1);
      consider(out, -1, left);
      apply(out, -1);
      candidates.forEach((_, k) => {
        if (k !== out && !chosen.includes(k) && !isBanned[k]) consider(out, k, left + gain(k, 1));
      });
      apply(out, 1);
    }
    if (best.out < 0 && best.in < 0) break;
    if (best.out >= 0) apply(best.out, -1);
    if (best.in >= 0) apply(best.in, 1);
    worth += best.gain;
  }
  return { worth, chosen };
}

const pieceWorth = (times: number): number => (times === 0 ? 0 : 1 - TWICE_COST * (times - 1));
