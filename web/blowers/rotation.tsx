import type { Family } from '../../src/fan/families.ts';
import { BLADES } from '../drawings/blade-paths.ts';
import { SCROLL } from '../drawings/scroll-path.ts';
import { Caution } from '../cautions/caution.tsx';
import { VerdictMark } from '../drawings/marks.tsx';
import { texts } from '../texts/index.ts';

/** Wheels that turn in a scroll; a propeller and a vacuum's wheel have none to be drawn in. */
const IN_A_SCROLL: readonly Family[] = [
  'radial',
  'radial-tip',
  'backward-inclined',
  'backward-curved',
  'forward-curved',
  'unknown',
];

/** Right and wrong rotation, drawn with the wheel at hand: the wheel turns towards the outlet along the widening scroll. */
export function Rotation({ family }: { family: Family }) {
  const t = texts.value.blowers;
  if (!IN_A_SCROLL.includes(family)) return null;
  return (
    <details class="unfold">
      <summary class="tap">{t.rotation}</summary>
      <div class="rotation">
        <figure>
          <Scroll family={family} right />
          <figcaption>
            <VerdictMark verdict="yes" size={20} /> {t.rotationRight}
          </figcaption>
        </figure>
        <figure>
          <Scroll family={family} right={false} />
          <figcaption>
            <VerdictMark verdict="no" size={20} /> {t.rotationWrong}
          </figcaption>
        </figure>
      </div>
      <p>{t.rotationWords[family]}</p>
      <Caution name="wrongWay" />
    </details>
  );
}

/** The casing widens clockwise, so the wheel must turn clockwise; air is blue, the wheel's arrow ink. */
function Scroll({ family, right }: { family: Family; right: boolean }) {
  const { paths, hub, line } = BLADES[family];
  const { centre, out } = SCROLL;
  const arrow = right ? SCROLL.right : SCROLL.wrong;
  return (
    <svg viewBox="0 0 156 142" width="156" height="142" class="ltr" aria-hidden="true">
      <path d={SCROLL.outline} fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" stroke-linejoin="round" />
      {right && (
        <path
          d={SCROLL.stream}
          fill="none"
          stroke="var(--air)"
          stroke-width="2.2"
          stroke-dasharray="9 6"
          stroke-linejoin="round"
        />
      )}
      <path
        d={`M${out.from} ${out.y}H${out.to - 8}`}
        stroke="var(--air)"
        stroke-width={right ? 3 : 1.6}
        stroke-dasharray={right ? '13 7' : '4 7'}
      />
      {right && <path d={`M${out.to} ${out.y}l-10 -5.5v11z`} fill="var(--air)" />}
      <g transform={`translate(${centre.x} ${centre.y}) scale(0.84) translate(-30 -30)`}>
        <circle cx="30" cy="30" r="28" fill="var(--body)" stroke="var(--ink)" stroke-width="1.6" />
        <path d={paths} fill="none" stroke="var(--ink)" stroke-width={line} />
        <circle cx="30" cy="30" r={hub} fill="var(--body)" stroke="var(--ink)" stroke-width="1.2" />
        <circle cx="30" cy="30" r="2.6" fill="var(--ink)" />
      </g>
      <path d={arrow.arc} fill="none" stroke="var(--ink)" stroke-width="3" />
      <path d="M8 0L-5 -6.5V6.5Z" fill="var(--ink)" transform={arrow.head} />
    </svg>
  );
}
