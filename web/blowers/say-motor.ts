import { isolated, sayNumber } from '../words/say.ts';

/** A share of the plate as people read it: whole percent, left to right in any sentence. */
export const sayShare = (share: number): string => isolated(`${sayNumber(100 * share)} %`);

/** Size of a cable as sold: 1.5 mm², 16 mm². */
export const sayCable = (area_m2: number): string => {
  const mm2 = 1e6 * area_m2;
  return isolated(`${sayNumber(mm2, mm2 < 1 ? 2 : mm2 % 1 > 1e-6 ? 1 : 0)} mm²`);
};
