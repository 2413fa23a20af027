/** Fewer figures do not tell how a hand writes. */
const ENOUGH = 30;
/** Ones are the commonest figures of any readings; where sevens abound and ones are few beside them, ones look like sevens. */
const FEW_ONES = 0.4;
const MANY_SEVENS = 0.2;

/**
 * Whether the ones of whoever wrote a sheet were read as sevens: a one with a long upstroke is one in many countries.
 * Source: F. Benford, The law of anomalous numbers, Proc. Am. Phil. Soc. 78 (1938). @param texts numbers as they were read
 */
export function mixesOnesAndSevens(texts: readonly string[]): boolean {
  const figures = texts.join('').replaceAll(/\D/g, '');
  const count = (figure: string) => figures.split(figure).length - 1;
  return figures.length >= ENOUGH && count('1') < FEW_ONES * count('7') && count('7') > MANY_SEVENS * figures.length;
}
