import type { CardTexts } from '../texts/en-card.ts';

/** px of print per mm of paper at 96 px to the inch. */
const MM = 96 / 25.4;

/**
 * A scale to hang behind one leg of a U-tube: one leg moves half of what both together read, so the scale is drawn half
 * size and shows the whole. Tens are long strokes; the line where the filters are to be changed is thick.
 */
export function FilterScale({
  clean_mm,
  loaded_mm,
  digits,
  texts,
}: {
  clean_mm: number;
  loaded_mm: number;
  digits: (text: string) => string;
  texts: CardTexts['tube'];
}) {
  const top_mm = Math.max(40, Math.ceil((loaded_mm * 1.35) / 20) * 20);
  const y = (mm: number) => (top_mm - mm) * 0.5 * MM + 6;
  const ticks = Array.from({ length: top_mm / 2 + 1 }, (_, i) => i * 2);
  const loaded = Math.round(loaded_mm);
  const clean = Math.round(clean_mm);
  let hatch = '';
  for (let x = 66; x < 126; x += 9) hatch += `M${x} ${y(loaded) - 3}l6 -8`;
  return (
    <svg
      class="ltr"
      width="312"
      height={y(0) + 10}
      viewBox={`0 0 312 ${y(0) + 10}`}
      fill="none"
      stroke="#000"
      role="img"
      aria-label={texts.plain(String(clean), String(loaded))}
    >
      <path d={`M1 ${y(0)}V${y(top_mm)}`} stroke-width="2" />
      {ticks.map((mm) => (
        <path key={mm} d={`M1 ${y(mm)}H${mm % 10 === 0 ? 26 : 10}`} stroke-width={mm % 10 === 0 ? 1.8 : 1} />
      ))}
      <path d={`M1 ${y(loaded)}H128`} stroke-width="5" />
      <path d={hatch} stroke-width="1.8" />
      <rect x="60" y={y(clean) - 6} width="12" height="12" fill="#000" stroke="none" />
      <g fill="#000" stroke="none">
        {ticks
          .filter((mm) => mm % 20 === 0)
          .map((mm) => (
            <text key={mm} x="34" y={y(mm) + 6} font-size="17">
              {digits(String(mm))}
            </text>
          ))}
        <text x="138" y={y(loaded) + 1} font-size="22" font-weight="700">
          {texts.change(digits(String(loaded)))}
        </text>
        <text x="138" y={y(loaded) + 22} font-size="16">
          {texts.changeWhat}
        </text>
        <text x="80" y={y(clean) + 6} font-size="17">
          {texts.fresh(digits(String(clean)))}
        </text>
      </g>
    </svg>
  );
}
