/**
 * Reading draws off their evenly spaced net of flows, by straight lines.
 */

const NONE: number[] = [];

/**
 * Stable crossings of a fan curve with factor × loss: the one of least flow, and any others [m3/s].
 * @param offset where the curve begins in `total`
 * @param loss   system loss on the net [Pa]; Infinity where no such flow can pass
 */
export function crossingOnNet(
  flows: Float64Array,
  total: Float64Array,
  offset: number,
  loss: Float64Array,
  factor: number,
): { least: number; others: number[] } {
  let least = -1;
  let others: number[] = NONE;
  let before = total[offset]! - factor * loss[0]!;
  if (before <= 0) return { least: 0, others };
  for (let i = 1; i < flows.length; i++) {
    const here = total[offset + i]! - factor * loss[i]!;
    if (before > 0 && here <= 0) {
      const share = here === -Infinity ? 0 : before / (before - here);
      const flow = flows[i - 1]! + share * (flows[i]! - flows[i - 1]!);
      if (least < 0) least = flow;
      else others = [...others, flow];
    }
    before = here;
  }
  return { least: least < 0 ? flows[flows.length - 1]! : least, others };
}

/** Share of the possible true curves that come down to the system's somewhere: 0 where its loss is nowhere reached. */
export function shareThatMeets(
  draws: { count: number; flows_m3_s: Float64Array; total_Pa: Float64Array },
  loss: Float64Array,
): number {
  const width = draws.flows_m3_s.length;
  let met = 0;
  for (let d = 0; d < draws.count; d++) {
    const above = (i: number) => draws.total_Pa[d * width + i]! > loss[i]!;
    let i = 1;
    while (above(0) && i < width && above(i)) i++;
    if (above(0) && i < width) met++;
  }
  return met / draws.count;
}

/** Value at a flow [m3/s]; the end value beyond the net. */
export function onTheNet(flows: Float64Array, values: Float64Array, offset: number, flow: number): number {
  const last = flows.length - 1;
  const at = Math.min(Math.max((flow / flows[last]!) * last, 0), last);
  const i = Math.min(Math.floor(at), last - 1);
  const low = values[offset + i]!;
  return low + (at - i) * (values[offset + i + 1]! - low);
}
