/**
 * Characters that readers of print take for each other: how often, of all times the one is printed, the other is read.
 * Both ways. Only the order of magnitude matters: these are floors under what the readings of one photo say.
 */
const PAIRS: readonly (readonly [number, string])[] = [
  // the same strokes: nothing but the neighbours tells them apart
  [0.3, '0O 0o 1l 1I 1| Il I| l| µu μu µμ ,. -– /| φϕ φø ⁻- ¹1 ³3 ²2 °º ~- ∼~ ×x'],
  [0.1, '0D 0Q 1i 1! 5S 5s 8B 2Z 2z I! li 6b 6G 9g 9q µp µy µH µj φp φo φ@ φ0 φg φq φ? ΔA Δ4 ΔD YV YT rt ij'],
  [0.1, `°* °' °" °o °0 °? ³* ³' ³" ³? ³° ²* ²' ²" ¹' ¹* ¹" ¹! ¹l ¹I /l /I /1 ,' .' ;, :. /7 η7 ηn Øo Ø0 ØO Ø@ ØQ`],
  [
    0.04,
    '4A )J ]J (C 7T 7/ 7? 0U 0C 6C GC cC ce co eo nr mn rn hn bh EF PF PR RK BE BR 3B SB HN HM MN VU VW WM UO DO OQ CO ec ao as',
  ],
  [0.04, 'tf ft kK wW cC sS vV xX zZ pP oO uU lt fi ti IT TY JI T1 LI E6 F7 y9'],
  // digits among themselves
  [0.012, '38 56 68 17 08 98 35 09 69 06 28 27 14 47 39 33 58 59 23'],
];

const SHARES = new Map<string, number>();
for (const [share, pairs] of PAIRS) {
  for (const pair of pairs.split(' ')) {
    const [a, b] = [...pair] as [string, string];
    for (const key of [a + b, b + a]) SHARES.set(key, Math.max(share, SHARES.get(key) ?? 0));
  }
}

/** How often a character that is printed is read as another one, 0..1; 1 for itself. Source: the table above. */
export function takenFor(read: string, printed: string): number {
  return read === printed ? 1 : (SHARES.get(read + printed) ?? 0);
}
