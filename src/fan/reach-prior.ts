import type { PseudoObservation } from './residuals.ts';

/**
 * Whoever tests a blower opens it about as far as the test pipe lets: the most open reading stands at three quarters of free delivery,
 * give or take a factor (standard deviation in ln). Practice value: a plain pipe as wide as the inlet reaches 0.8–0.95 of it, a
 * hole of half the pipe's area about 0.6; wide enough for a test that stopped at a quarter.
 */
const REACH = { share: 0.75, sd: 0.45 };

/**
 * What the reach of a test says of free delivery: readings that hardly bend could else belong to a blower of any size.
 * @param testedUpTo_m3_s greatest flow of a test of several rows, brought to run speed; null where there was none
 */
export function reachHint(testedUpTo_m3_s: number | null): PseudoObservation[] {
  if (testedUpTo_m3_s === null) return [];
  return [(curve) => Math.log(testedUpTo_m3_s / (REACH.share * curve.flowScale_m3_s)) / REACH.sd];
}
