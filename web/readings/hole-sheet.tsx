import { signal } from '@preact/signals';
import type { Rig } from '../../src/readings/schema.ts';
import { Either } from '../forms/either.tsx';
import { texts } from '../texts/index.ts';
import { digits, isolated } from '../words/say.ts';
import { A4, holeSheets, WINDOW, type HoleSheet } from './hole-sheet-layout.ts';

/** One drawing for each board; outside of the page, which is laid out anew for paper. */
const each = signal(false);

/** The holes at true size, to be printed, glued on and sawn out; one A4 sheet or more. */
export function HoleSheets({ rig, holes_m, onClose }: { rig: Rig; holes_m: readonly number[]; onClose: () => void }) {
  const t = texts.value.readings.sheet;
  const inside = millimetres(rig.pipeDiameter_m ?? 0);
  const outside = rig.pipeOutsideDiameter_m == null ? null : millimetres(rig.pipeOutsideDiameter_m);
  const sheets = holeSheets(holes_m.map(millimetres), outside ?? inside, each.value);
  return (
    <div class="hole-sheets">
      <div class="hole-actions">
        <button type="button" class="tap" onClick={onClose}>
          {t.close}
        </button>
        <Either
          label={t.howMany}
          value={each.value}
          options={[
            { value: false, text: t.together },
            { value: true, text: t.each },
          ]}
          onChoose={(value) => (each.value = value)}
        />
        <p class="second">{t.scaleHint}</p>
        <button type="button" class="press fill" onClick={() => print()}>
          {t.print(digits(String(sheets.length)))}
        </button>
      </div>
      {sheets.map((sheet, i) => (
        <Sheet
          key={i}
          sheet={sheet}
          inside={inside}
          outside={outside}
          outletSide={rig.side === 'outlet'}
          id={`holes-${i}`}
        />
      ))}
    </div>
  );
}

const millimetres = (m: number): number => Math.round(m * 10_000) / 10;
const mm = (size: number): string => digits(String(size));

function Sheet({
  sheet: { holes, centre, part, joins },
  inside,
  outside,
  outletSide,
  id,
}: {
  sheet: HoleSheet;
  inside: number;
  outside: number | null;
  outletSide: boolean;
  id: string;
}) {
  const t = texts.value.readings.sheet;
  const title = t.title(isolated(`${holes.map(mm).join(', ')} mm`));
  const widest = outside ?? inside;
  const reach = widest / 2 + 3;
  const cross = `M${centre.x - reach} ${centre.y}h${2 * reach}M${centre.x} ${centre.y - reach}v${2 * reach}`;
  const which =
    part.columns * part.rows > 1
      ? t.part(digits(String((part.row - 1) * part.columns + part.column)), digits(String(part.columns * part.rows)))
      : '';
  return (
    <svg
      class="hole-sheet"
      width={`${A4.width}mm`}
      height={`${A4.height}mm`}
      viewBox={`0 0 ${A4.width} ${A4.height}`}
      role="img"
      aria-label={title}
    >
      <rect width={A4.width} height={A4.height} fill="#fff" />
      <g fill="#000" text-anchor="middle">
        <text x={A4.width / 2} y="17" font-size="5.6" font-weight="700">
          {title}
        </text>
        <text x={A4.width / 2} y="25.5" font-size="3.8">
          {outside === null
            ? t.pipe(isolated(`${mm(inside)} mm`))
            : t.pipeBoth(isolated(`${mm(inside)} mm`), isolated(`${mm(outside)} mm`))}
        </text>
        <text x={A4.width / 2} y="33" font-size="3.8">
          {which || (outletSide ? t.cutOutlet : t.cutInlet)}
        </text>
      </g>
      <clipPath id={id}>
        <rect {...WINDOW} />
      </clipPath>
      <g clip-path={`url(#${id})`} fill="none" stroke="#000">
        <path d={cross} stroke-width="0.18" stroke-dasharray="9 1.5 1.5 1.5" />
        {outside !== null && (
          <circle class="pipe-outside" cx={centre.x} cy={centre.y} r={outside / 2} stroke-width="0.3" />
        )}
        <circle
          class="pipe-inside"
          cx={centre.x}
          cy={centre.y}
          r={inside / 2}
          stroke-width="0.25"
          stroke-dasharray="3 2"
        />
        {holes.map((hole) => (
          <circle key={hole} class="hole" cx={centre.x} cy={centre.y} r={hole / 2} stroke-width="0.35" />
        ))}
        {joins.map(({ x, y }) => (
          <path key={`${x} ${y}`} class="join" d={`M${x - 4} ${y}h8M${x} ${y - 4}v8`} stroke-width="0.25" />
        ))}
      </g>
      <g fill="#000" text-anchor="middle" clip-path={`url(#${id})`}>
        {holes.map((hole, i) => (
          <text key={hole} class="on-line ltr" x={centre.x} y={labelY(centre.y, hole / 2, i)} font-size="3.4">
            {mm(hole)}
          </text>
        ))}
      </g>
      <Ruler label={t.ruler} />
    </svg>
  );
}

/** Neighbouring circles are named in turn above and below the centre, so that the figures keep apart. */
const labelY = (centreY: number, radius: number, index: number): number =>
  centreY + (index % 2 === 0 ? -radius : radius) + 1.2;

/** A rule of 100 mm: if it measures anything else, the printer has changed the size. */
function Ruler({ label }: { label: string }) {
  const [x, y] = [55, 276];
  const ticks = Array.from({ length: 11 }, (_, i) => `M${x + 10 * i} ${y}v${i % 5 === 0 ? -5 : -3}`).join('');
  return (
    <g stroke="#000" stroke-width="0.35" fill="none">
      <path class="ruler" d={`M${x} ${y}h100`} />
      <path d={ticks} />
      <g fill="#000" stroke="none" text-anchor="middle">
        {[0, 50, 100].map((at) => (
          <text key={at} x={x + at} y={y - 6.5} font-size="3.4" class="ltr">
            {mm(at)}
          </text>
        ))}
        <text x={A4.width / 2} y={y + 7} font-size="4" font-weight="700">
          {label}
        </text>
      </g>
    </g>
  );
}
