import { useSignal } from '@preact/signals';
import type { Rig } from '../../src/readings/schema.ts';
import { Either } from '../forms/either.tsx';
import { texts } from '../texts/index.ts';
import { digits, isolated, say, sayNumber, unitFor } from '../words/say.ts';
import { PER_RADIUS, ROUND_RULES, traversePlaces, type RoundRule, type TraversePlaces } from './traverse-places.ts';

/** Where to hold the instrument, in figures to mark on its stem and as a picture of the pipe from its end. */
export function TraversePart({ rig }: { rig: Rig }) {
  const t = texts.value.readings.traverse;
  const rule = useSignal<RoundRule>('log-Tchebycheff');
  const perRadius = useSignal<number>(PER_RADIUS[0]);
  const places = traversePlaces(rig, rule.value, perRadius.value);
  const head_m = rig.method === 'vane-traverse' ? (rig.anemometerDiameter_m ?? 0) : 0;
  return (
    <details class="unfold traverse">
      <summary class="tap">{t.title}</summary>
      {places === null ? (
        <p class="second">{(rig.hubDiameter_m ?? 0) > 0 ? t.hub : t.waits}</p>
      ) : (
        <>
          {places.round && (
            <>
              <Either
                label={t.rule}
                value={rule.value}
                options={ROUND_RULES.map((value) => ({ value, text: isolated(value) }))}
                onChoose={(value) => (rule.value = value)}
              />
              <Either
                label={t.perDiameter}
                value={perRadius.value}
                options={PER_RADIUS.map((value) => ({ value: value as number, text: sayNumber(2 * value) }))}
                onChoose={(value) => (perRadius.value = value)}
              />
            </>
          )}
          <p>{t.all(digits(String(places.count)))}</p>
          <Section places={places} />
          {places.ways.map((way, i) => (
            <div key={i}>
              <h3>
                {places.round ? t.bothDiameters : i === 0 ? t.alongWidth : t.alongHeight}{' '}
                <bdi>{say('length', way.size_m)}</bdi>
              </h3>
              <ol class="stem-marks ltr">
                {way.marks_m.map((mark) => (
                  <li key={mark} class={mark < head_m / 2 || way.size_m - mark < head_m / 2 ? 'short' : undefined}>
                    {stemMark(mark)}
                  </li>
                ))}
              </ol>
            </div>
          ))}
          <p class="second">{t.fromWall(isolated(unitFor('length')))}</p>
          {places.ways.some(({ marks_m }) => marks_m[0]! < head_m / 2) && <p class="strong">{t.headTooLarge}</p>}
        </>
      )}
    </details>
  );
}

/** A mark to the half millimetre a pencil can make: one decimal of millimetres, whatever is usual for pipes. */
function stemMark(mark_m: number): string {
  const unit = unitFor('length');
  return unit === 'mm' ? sayNumber(mark_m * 1000, 1) : say('length', mark_m, unit);
}

const [WIDE, MIDDLE, RADIUS] = [200, 100, 84];

/** The pipe from its end with a dot at every place; dots are to scale. */
function Section({ places: { round, ways } }: { places: TraversePlaces }) {
  const t = texts.value.readings.traverse;
  const [across, down] = [ways[0]!, ways[1] ?? ways[0]!];
  const scale = (2 * RADIUS) / Math.max(across.size_m, down.size_m);
  const [halfWide, halfHigh] = [(scale * across.size_m) / 2, (scale * down.size_m) / 2];
  const xs = across.marks_m.map((mark) => MIDDLE - halfWide + scale * mark);
  const ys = down.marks_m.map((mark) => MIDDLE - halfHigh + scale * mark);
  const dots = round
    ? [...xs.map((x) => [x, MIDDLE] as const), ...ys.map((y) => [MIDDLE, y] as const)]
    : xs.flatMap((x) => ys.map((y) => [x, y] as const));
  return (
    <svg class="traverse-picture ltr" viewBox={`0 0 ${WIDE} ${WIDE}`} role="img" aria-label={t.picture}>
      {round ? (
        <circle cx={MIDDLE} cy={MIDDLE} r={RADIUS} fill="var(--body)" stroke="var(--ink)" stroke-width="1.8" />
      ) : (
        <rect
          x={MIDDLE - halfWide}
          y={MIDDLE - halfHigh}
          width={2 * halfWide}
          height={2 * halfHigh}
          fill="var(--body)"
          stroke="var(--ink)"
          stroke-width="1.8"
        />
      )}
      {round && (
        <path
          d={`M${MIDDLE - RADIUS - 10} ${MIDDLE}h${2 * RADIUS + 20}M${MIDDLE} ${MIDDLE - RADIUS - 10}v${2 * RADIUS + 20}`}
          stroke="var(--ink)"
          stroke-width="0.8"
          stroke-dasharray="9 3 2 3"
        />
      )}
      {dots.map(([x, y]) => (
        <circle key={`${x} ${y}`} class="place" cx={x} cy={y} r="3.4" fill="var(--air)" />
      ))}
    </svg>
  );
}
