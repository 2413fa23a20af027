import { toPx } from './axis.ts';
import type { Axis } from './axis.ts';
import { DASHES } from './dashes.ts';
import { letterPlot, SAMPLE, wide } from './plot-lettering.ts';
import type { Lettering } from './plot-lettering.ts';
import { barY, limitHatch, postHatch, wedge } from './plot-frame.ts';
import type { PlotFrame } from './plot-frame.ts';
import { readCurve } from './plot-model.ts';
import type { PlotModel, Spot } from './plot-model.ts';

export type PlotWords = {
  blower: string;
  chosen: string[];
  others: string[];
  clean: string;
  loaded: string;
  need: string;
  motor: string;
  allOpen: string;
  unstable: string;
  flowUnit: string;
  pressureUnit: string;
};

type Props = { id: string; model: PlotModel; frame: PlotFrame; words: PlotWords; reading: number | null };

/** What lies over the curves: axes that overshoot, the hatched wedge, running points, the need's post, flow bars, the motor's limit, names. */
export function PlotOverlay({ id, model, frame, words, reading }: Props) {
  const { area, motor, font } = frame;
  const lettering = letterPlot(model, frame, words);
  const bottom = motor?.from ?? area.bottom;
  const nameOf = (plan: string) => words.others[model.others.findIndex((other) => other.plan === plan)] ?? plan;
  return (
    <svg
      class="plot-overlay"
      width={frame.width}
      height={frame.height}
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      aria-hidden="true"
    >
      <defs>
        <clipPath id={`${id}-clip`}>
          <rect x={area.left} y={area.top} width={area.right - area.left} height={area.bottom - area.top} />
        </clipPath>
        <pattern id={`${id}-hatch`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V5" class="hatching" />
        </pattern>
      </defs>
      {model.clean && model.loaded && (
        <path d={wedge(frame, model.clean, model.loaded)} fill={`url(#${id}-hatch)`} clip-path={`url(#${id}-clip)`} />
      )}
      <path
        class="axes"
        d={`M${area.left} ${area.top - 4}V${area.bottom + 6}M${area.left - 6} ${area.bottom}H${area.right + 4}`}
      />
      <text class="unit halo" x="2" y={area.top - 12} font-size={font}>
        {words.pressureUnit}
      </text>
      <text class="unit" x={frame.width - 2} y={frame.height - 9} font-size={font} text-anchor="end">
        {words.flowUnit}
      </text>
      <Need model={model} frame={frame} text={words.need} />
      <Bars model={model} frame={frame} words={words} />
      {motor && model.motor && <MotorStrip model={model} frame={frame} axis={motor} words={words} />}
      {lettering.others.map((name) => (
        <text key={name.id} class="halo" x={name.x} y={name.y} font-size={font} text-anchor={name.anchor}>
          {nameOf(name.id)}
        </text>
      ))}
      <text class="halo air" x={lettering.blower.x} y={lettering.blower.y} font-size={font}>
        {words.blower}
      </text>
      <Corner lettering={lettering} font={font} leading={frame.leading} model={model} words={words} />
      {model.others.map(
        (other) =>
          other.at &&
          inside(other.at, model) && (
            <circle key={other.plan} class="dot" r="3.8" {...at(other.at, frame.flow, frame.pressure)} />
          ),
      )}
      {model.points.unstable.map(
        (spot) => inside(spot, model) && <Unstable key={spot.x} spot={spot} frame={frame} text={words.unstable} />,
      )}
      {model.points.clean && (
        <circle
          class={model.loaded ? 'ring' : 'disc'}
          r="5.8"
          {...at(model.points.clean, frame.flow, frame.pressure)}
        />
      )}
      {model.points.loaded && <circle class="disc" r="5.8" {...at(model.points.loaded, frame.flow, frame.pressure)} />}
      {reading !== null && <path class="reading" d={`M${toPx(frame.flow, reading)} ${area.top - 6}V${bottom}`} />}
    </svg>
  );
}

type CornerProps = {
  lettering: Lettering;
  font: number;
  leading: number;
  model: PlotModel;
  words: PlotWords;
};

/** Name of the chosen plan with its leader, and the key of those that could not be named at their ends. */
function Corner({ lettering, font, leading, model, words }: CornerProps) {
  const { x, y, leader } = lettering.chosen;
  const row = (i: number) => y + i * font * leading;
  return (
    <>
      {leader && (
        <path
          class="leader"
          d={`M${leader.x} ${leader.y}L${leader.x > x ? x + wide(words.chosen[0] ?? '', font) + 3 : x - 3} ${y - font * 0.4}`}
        />
      )}
      {words.chosen.map((text, i) => (
        <text key={text} class="halo strong" x={x} y={row(i)} font-size={font}>
          {text}
        </text>
      ))}
      {lettering.key.map(({ plan, text }, i) => {
        const at = row(words.chosen.length + i);
        const dash = DASHES[model.others.findIndex((other) => other.plan === plan) % DASHES.length];
        return (
          <g key={plan}>
            <path class="sample" d={`M${x} ${at - font * 0.35}h${SAMPLE - 6}`} stroke-dasharray={dash} />
            <text class="halo" x={x + SAMPLE} y={at} font-size={font}>
              {text}
            </text>
          </g>
        );
      })}
    </>
  );
}

const at = (spot: Spot, x: Axis, y: Axis) => ({ cx: toPx(x, spot.x), cy: toPx(y, spot.y) });
const inside = (spot: Spot, model: PlotModel): boolean => spot.x <= model.flowMax && spot.y <= model.pressureMax;

/** The post of what is needed: hatched on the short side, from the blower's curve down through the bars. */
function Need({ model, frame, text }: { model: PlotModel; frame: PlotFrame; text: string }) {
  if (model.need === null) return null;
  const x = toPx(frame.flow, model.need);
  const reach = readCurve(model.fan, model.need);
  const top = reach === null ? frame.area.top : Math.max(frame.area.top, toPx(frame.pressure, reach) - 14);
  const bottom = barY(frame, model.bars.length);
  const half = wide(text, frame.font) / 2;
  const centre = Math.min(frame.area.right - half, Math.max(frame.area.left + half, x));
  return (
    <>
      <path class="post" d={`M${x} ${top}V${bottom}`} />
      <path class="post-hatch" d={postHatch(x, top, bottom)} />
      <text class="halo strong" x={centre} y={bottom + frame.font} font-size={frame.font} text-anchor="middle">
        {text}
      </text>
    </>
  );
}

/** One fat bar per filter state: 19 in 20 lie inside, the notch is the most likely. */
function Bars({ model, frame, words }: { model: PlotModel; frame: PlotFrame; words: PlotWords }) {
  return (
    <>
      {model.bars.map((bar, i) => {
        const [low, high, middle] = [bar.low, bar.high, bar.middle].map((value) =>
          Math.min(frame.area.right, toPx(frame.flow, value)),
        ) as [number, number, number];
        const y = barY(frame, i);
        const single = model.bars.length === 1;
        const solid = bar.state === 'loaded' || single;
        const text = single ? '' : words[bar.state];
        const right = high + 8 + wide(text, frame.font) <= frame.width;
        return (
          <g key={bar.state}>
            <rect
              class={solid ? 'flow-bar solid' : 'flow-bar'}
              x={low}
              y={y}
              width={Math.max(2, high - low)}
              height="10"
            />
            <path class={solid ? 'flow-notch on-solid' : 'flow-notch'} d={`M${middle} ${y - 2}v14`} />
            <text
              class={solid ? 'halo strong' : 'halo'}
              x={right ? high + 8 : low - 8}
              y={y + 9.5}
              font-size={frame.font}
              text-anchor={right ? 'start' : 'end'}
            >
              {text}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** Load of the motor over the same flow; above the plate's line it may not go. */
function MotorStrip({
  model,
  frame,
  axis,
  words,
}: {
  model: PlotModel;
  frame: PlotFrame;
  axis: Axis;
  words: PlotWords;
}) {
  const { area, font } = frame;
  const motor = model.motor!;
  const plate = toPx(axis, 100);
  const start = readCurve(motor.curve, model.flowMax * 0.3) ?? 0;
  const low = toPx(axis, start) > (plate + axis.from) / 2;
  return (
    <>
      <path
        class="axes"
        d={`M${area.left} ${axis.to - 6}V${axis.from + 5}M${area.left - 6} ${axis.from}H${area.right + 4}`}
      />
      <path class="limit" d={`M${area.left} ${plate}H${area.right}`} />
      <path class="post-hatch" d={limitHatch(plate, area.left, area.right)} />
      <text class="halo unit" x={area.left + 8} y={low ? plate + font + 4 : axis.from - 8} font-size={font}>
        {words.motor}
      </text>
      {motor.clean && <circle class={motor.loaded ? 'ring' : 'disc'} r="5" {...at(motor.clean, frame.flow, axis)} />}
      {motor.loaded && <circle class="disc" r="5" {...at(motor.loaded, frame.flow, axis)} />}
      {motor.allOpen && <AllOpen spot={motor.allOpen} frame={frame} axis={axis} text={words.allOpen} />}
    </>
  );
}

function AllOpen({ spot, frame, axis, text }: { spot: Spot; frame: PlotFrame; axis: Axis; text: string }) {
  const x = Math.min(frame.area.right, toPx(frame.flow, spot.x));
  const y = toPx(axis, spot.y);
  const width = wide(text, frame.font);
  const end = x + width / 2 > frame.area.right;
  return (
    <>
      <rect class="square" x={x - 4.5} y={y - 4.5} width="9" height="9" />
      <text
        class="halo"
        x={end ? frame.area.right : x}
        y={Math.min(axis.from - 5, y + frame.font + 9)}
        font-size={frame.font}
        text-anchor={end ? 'end' : 'middle'}
      >
        {text}
      </text>
    </>
  );
}

/** A crossing the flow cannot rest at: a ring with a cross, named. */
function Unstable({ spot, frame, text }: { spot: Spot; frame: PlotFrame; text: string }) {
  const x = toPx(frame.flow, spot.x);
  const y = toPx(frame.pressure, spot.y);
  return (
    <>
      <circle class="ring" r="5.8" cx={x} cy={y} />
      <path class="cross" d={`M${x - 3} ${y - 3}l6 6M${x + 3} ${y - 3}l-6 6`} />
      <text class="halo" x={x} y={y - 11} font-size={frame.font} text-anchor="middle">
        {text}
      </text>
    </>
  );
}
