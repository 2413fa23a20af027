import type { Data, Layout } from 'plotly.js-dist-min';
import { steps } from './axis.ts';
import { DASHES } from './dashes.ts';
import type { PlotFrame } from './plot-frame.ts';
import type { Curve, PlotModel } from './plot-model.ts';

/** The curves and the grid, drawn by Plotly in this page's grammar; everything else on the plot is the layer above (plot-overlay.tsx). */

/** Colours as the theme has them now; Plotly knows no CSS variables. */
type Inks = Record<'ink' | 'ink2' | 'air' | 'airtint' | 'hair', string>;

/** How ticks are written: digits and thousands as the user reads them. */
export type WriteNumber = (value: number) => string;

/** The newest drawing asked for in each box: an older one that is still waiting for the library gives way. */
const newest = new WeakMap<HTMLElement, symbol>();

export async function drawCurves(
  box: HTMLElement,
  model: PlotModel,
  frame: PlotFrame,
  write: WriteNumber,
): Promise<void> {
  const mine = Symbol('drawing');
  newest.set(box, mine);
  const { default: plotly } = await import('plotly.js-dist-min');
  if (newest.get(box) !== mine || !box.isConnected) return;
  const inks = inksNow();
  await plotly.react(box, traces(model, inks), layoutOf(frame, inks, write), {
    staticPlot: true,
    displayModeBar: false,
    responsive: false,
  });
}

export async function clearCurves(box: HTMLElement): Promise<void> {
  newest.delete(box);
  const { default: plotly } = await import('plotly.js-dist-min');
  plotly.purge(box);
}

function inksNow(): Inks {
  const style = getComputedStyle(document.documentElement);
  const ink = (name: string) => style.getPropertyValue(`--${name}`).trim();
  return { ink: ink('ink'), ink2: ink('ink2'), air: ink('air'), airtint: ink('airtint'), hair: ink('hair') };
}

type Pen = { color: string; width: number; dash?: string };
const line = ({ x, y }: Curve, pen: Pen, more: Partial<Data> = {}): Data =>
  ({ type: 'scatter', mode: 'lines', x, y, line: pen, hoverinfo: 'skip', cliponaxis: true, ...more }) as Data;

function traces(model: PlotModel, inks: Inks): Data[] {
  const { fan, motor } = model;
  const edge: Pen = { color: inks.air, width: 1 };
  const second = { yaxis: 'y2' } as Partial<Data>;
  const band = (x: number[], low: number[], high: number[], more: Partial<Data> = {}): Data[] => [
    line({ x, y: high }, edge, more),
    line({ x, y: low }, edge, { ...more, fill: 'tonexty', fillcolor: inks.airtint } as Partial<Data>),
  ];
  return [
    ...band(fan.x, fan.low, fan.high),
    ...model.others.map((other, i) =>
      line(other.curve, { color: inks.ink, width: 1.9, dash: DASHES[i % DASHES.length] }),
    ),
    ...(model.clean ? [line(model.clean, { color: inks.ink, width: model.loaded ? 1.4 : 2.6 })] : []),
    ...(model.loaded ? [line(model.loaded, { color: inks.ink, width: 2.6 })] : []),
    line(fan, { color: inks.air, width: 3.6 }),
    ...(motor
      ? [
          ...band(motor.curve.x, motor.low, motor.high, second),
          line(motor.curve, { color: inks.air, width: 3.2 }, second),
        ]
      : []),
  ];
}

function layoutOf(frame: PlotFrame, inks: Inks, write: WriteNumber): Partial<Layout> {
  const { area, motor } = frame;
  const bottom = motor?.from ?? frame.height - 24;
  const whole = bottom - area.top;
  const flowSteps = [0, ...steps(frame.flow.max, frame.width > 430 ? 5 : 4)];
  const pressureSteps = steps(frame.pressure.max, 4);
  const axis = {
    fixedrange: true,
    zeroline: false,
    showline: false,
    ticks: '' as const,
    gridcolor: inks.hair,
    gridwidth: 1,
    automargin: false,
  };
  const font = { family: getComputedStyle(document.body).fontFamily, size: frame.font, color: inks.ink2 };
  return {
    width: frame.width,
    height: frame.height,
    margin: { l: area.left, r: frame.width - area.right, t: area.top, b: frame.height - bottom, pad: 0 },
    paper_bgcolor: 'transparent',
    plot_bgcolor: 'transparent',
    showlegend: false,
    font,
    xaxis: {
      ...axis,
      range: [0, frame.flow.max],
      tickvals: flowSteps,
      ticktext: withoutCrowding(flowSteps, frame).map((value) => (value === null ? '' : write(value))),
      anchor: 'free',
      position: 0,
      tickangle: 0,
    },
    yaxis: {
      ...axis,
      range: [0, frame.pressure.max],
      domain: [(bottom - area.bottom) / whole, 1],
      tickvals: pressureSteps,
      ticktext: pressureSteps.map(write),
      ticklabelstandoff: 3,
    },
    ...(motor && {
      yaxis2: {
        ...axis,
        range: [0, motor.max],
        domain: [0, (bottom - motor.to) / whole],
        tickvals: [50, 100],
        ticktext: [50, 100].map(write),
        ticklabelstandoff: 3,
        anchor: 'x',
      },
    }),
  } as Partial<Layout>;
}

/** The unit stands at the right end of the flow axis: a figure that would run into it is left out. */
const withoutCrowding = (values: number[], frame: PlotFrame): (number | null)[] =>
  values.map((value) => (value / frame.flow.max > 0.86 ? null : value));
