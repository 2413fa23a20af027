import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import type { FanCurve } from '../../src/assessment.ts';
import { texts } from '../texts/index.ts';
import { sayNumber, unitFor } from '../words/say.ts';
import { fanPlotGeometry, type PlotPoint } from './fan-plot-geometry.ts';
import './plot.css';

type Props = {
  curve: FanCurve | null;
  points: readonly PlotPoint[];
  height?: number;
  /** said to those who do not see it */
  label: string;
  /** marks that stand out: readings thrown out or doubted */
  doubted?: ReadonlySet<string>;
};

/** The blower's curve with its band, and every find on it: disc = reading, ring = chart point, square = rated point. */
export function FanPlot({ curve, points, height = 250, label, doubted }: Props) {
  const clip = useId();
  const root = useRef<HTMLDivElement>(null);
  const width = useSignal(358);
  useEffect(() => {
    const element = root.current;
    if (!element) return undefined;
    const watch = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) width.value = entry.contentRect.width;
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  const units = { flow: unitFor('flow'), pressure: unitFor('pressure') };
  const frame = { width: width.value, height, left: 44, right: 8, top: 26, bottom: 26 };
  const g = fanPlotGeometry(curve, points, frame, units);
  const base = height - frame.bottom;
  const right = width.value - frame.right;
  return (
    <div class="fan-plot ltr" ref={root}>
      <svg width={width.value} height={height} role="img" aria-label={label}>
        <text x="0" y="11" font-size="12.5" class="ink2">
          {units.pressure}, {texts.value.blowers.total}
        </text>
        {g.yTicks.slice(1).map((tick) => (
          <g key={tick.text}>
            <path d={`M${frame.left} ${tick.at}H${right}`} class="hair" />
            <text x={frame.left - 6} y={tick.at + 4.5} font-size="12.5" text-anchor="end" class="ink2">
              {sayNumber(tick.text, decimalsOf(tick.text))}
            </text>
          </g>
        ))}
        <clipPath id={clip}>
          <rect x={frame.left} y={frame.top - 8} width={right - frame.left} height={base - frame.top + 8} />
        </clipPath>
        <g clip-path={`url(#${clip})`}>
          <path d={g.band} class="band" />
          <path d={g.low} class="edge" />
          <path d={g.high} class="edge" />
          <path d={g.curve} class="curve" />
        </g>
        <path d={`M${frame.left} ${frame.top - 10}V${base + 7}M${frame.left - 7} ${base}H${right + 4}`} class="axis" />
        {g.xTicks.slice(0, -1).map((tick) => (
          <text
            key={tick.text}
            x={tick.at}
            y={base + 19}
            font-size="12.5"
            text-anchor={tick.text === 0 ? 'end' : 'middle'}
            class="ink2"
          >
            {tick.text === 0 ? '' : sayNumber(tick.text, decimalsOf(tick.text))}
          </text>
        ))}
        <text x={right + 4} y={base + 19} font-size="12.5" text-anchor="end" class="ink2">
          {units.flow}
        </text>
        {g.points.map((p) =>
          doubted?.has(p.key) ? (
            <path key={p.key} d={`M${p.x - 5} ${p.y - 5}l10 10m0 -10l-10 10`} class="thrown-out" />
          ) : p.kind === 'rated-point' ? (
            <rect key={p.key} x={p.x - 4.5} y={p.y - 4.5} width="9" height="9" class="find-square" />
          ) : (
            <circle
              key={p.key}
              cx={p.x}
              cy={p.y}
              r={p.kind === 'chart' ? 2.6 : 5}
              class={p.kind === 'chart' ? 'find-ring' : 'find-disc'}
            />
          ),
        )}
      </svg>
    </div>
  );
}

const decimalsOf = (value: number): number =>
  Number.isInteger(value) ? 0 : (String(value).split('.')[1]?.length ?? 0);
