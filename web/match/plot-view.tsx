import { useSignal } from '@preact/signals';
import { useEffect, useId, useMemo, useRef } from 'preact/hooks';
import { toBase, unitCalled } from '../../src/units/index.ts';
import { dark, settings } from '../state/settings.ts';
import type { MatchTexts } from '../texts/en-match.ts';
import { sayNumber, unitFor } from '../words/say.ts';
import { toValue } from './axis.ts';
import { planTitle } from './plans.ts';
import type { PlanView } from './plans.ts';
import type { Names } from './names.ts';
import { clearCurves, drawCurves } from './plot.ts';
import { plotFrame } from './plot-frame.ts';
import { plotModel, readCurve } from './plot-model.ts';
import type { PlotModel } from './plot-model.ts';
import { PlotOverlay } from './plot-overlay.tsx';
import { saying } from './say.ts';
import { useWidth } from './use-width.ts';

type Props = { plans: readonly PlanView[]; chosen: PlanView; names: Names; texts: MatchTexts };

/** The overlay plot: what the blower can do against what the ducts ask, with flow bars and motor load on the same flow axis. */
export function PlotView({ plans, chosen, names, texts }: Props) {
  const t = texts.plot;
  const id = useId();
  const [box, width] = useWidth<HTMLDivElement>(358);
  const curves = useRef<HTMLDivElement>(null);
  const state = useSignal<'drawing' | 'drawn' | 'failed'>('drawing');
  const reading = useSignal<number | null>(null);
  const units = { flow: unitFor('flow'), pressure: unitFor('pressure') };
  const model = useMemo(() => plotModel(plans, chosen, units), [plans, chosen, units.flow, units.pressure]);
  const tall = settings.value.language === 'ur';
  const frame = useMemo(() => model && plotFrame(model, width, tall), [model, width, tall]);
  const isDark = dark.value;

  useEffect(() => {
    const element = curves.current;
    if (!element || !model || !frame) return;
    drawCurves(element, model, frame, (value) => sayNumber(value, decimalsOf(value))).then(
      () => (state.value = 'drawn'),
      (error: unknown) => {
        console.error(error);
        state.value = 'failed';
      },
    );
  }, [model, frame, isDark]);
  useEffect(() => {
    const element = curves.current;
    return () => {
      if (element && state.peek() === 'drawn') void clearCurves(element);
    };
  }, []);

  if (!model || !frame) return null;
  const read = (event: PointerEvent) => {
    const left = (event.currentTarget as HTMLElement).getBoundingClientRect().left;
    reading.value = Math.min(model.flowMax, Math.max(0, toValue(frame.flow, event.clientX - left)));
  };
  const step = (event: KeyboardEvent) => {
    const by = { ArrowRight: 0.02, ArrowUp: 0.02, ArrowLeft: -0.02, ArrowDown: -0.02 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    reading.value = Math.min(model.flowMax, Math.max(0, (reading.value ?? model.flowMax / 2) + by * model.flowMax));
  };
  const need = model.need === null ? '' : saying.quantity('flow', toBase(model.need, unitCalled(units.flow)));
  const title = planTitle(chosen, names, texts);
  const who = chosen.open.length === 1 ? t.needs(title) : t.needTogether;
  const spoken = reading.value === null ? t.hint : readout(model, reading.value, units, texts);
  return (
    <figure class="plot" ref={box}>
      <figcaption class="unseen">{t.title}</figcaption>
      <div
        class="plot-box ltr"
        style={{ width: `${frame.width}px`, height: `${frame.height}px` }}
        role="slider"
        tabIndex={0}
        aria-label={t.title}
        aria-valuemin={0}
        aria-valuemax={Math.round(model.flowMax)}
        aria-valuenow={Math.round(reading.value ?? model.points.loaded?.x ?? model.points.clean?.x ?? 0)}
        aria-valuetext={spoken}
        onPointerDown={read}
        onPointerMove={read}
        onPointerLeave={(event) => event.pointerType === 'mouse' && (reading.value = null)}
        onKeyDown={step}
      >
        {reading.value !== null && (
          <p class="readout" dir="auto">
            {spoken}
          </p>
        )}
        <div class="plot-curves" ref={curves} />
        {state.value !== 'drawn' && <p class="plot-wait second">{state.value === 'failed' ? t.failed : t.drawing}</p>}
        <PlotOverlay
          id={id}
          model={model}
          frame={frame}
          reading={reading.value}
          words={{
            blower: t.blower,
            chosen: model.clean && model.loaded ? t.filling(title) : t.single(title),
            others: model.others.map((other) =>
              planTitle(
                plans.find((plan) => plan.name === other.plan)!,
                names,
                texts,
              ),
            ),
            clean: t.clean,
            loaded: t.loaded,
            need: model.need === null ? '' : `${who} ${need}`,
            motor: t.motor,
            allOpen: t.allOpen,
            unstable: t.unstable,
            flowUnit: units.flow,
            pressureUnit: units.pressure,
          }}
        />
      </div>
      <p class="second">
        {model.motor ? '' : `${t.motorUnknown}. `}
        {t.legend} {t.hint}
      </p>
    </figure>
  );
}

const decimalsOf = (value: number): number => (Math.abs(value) >= 10 || Number.isInteger(value) ? 0 : 2);

/** What stands above one place of the flow axis, in words. */
function readout(model: PlotModel, flow: number, units: { flow: string; pressure: string }, texts: MatchTexts): string {
  const t = texts.plot;
  const pa = (value: number) => toBase(value, unitCalled(units.pressure));
  const at = (y: number[]) => readCurve({ x: model.fan.x, y }, flow);
  const [middle, low, high] = [at(model.fan.y), at(model.fan.low), at(model.fan.high)];
  const ducts = model.loaded ?? model.clean;
  const asked = ducts && readCurve(ducts, flow);
  const load = model.motor && readCurve(model.motor.curve, flow);
  return [
    t.readAt(saying.quantity('flow', toBase(flow, unitCalled(units.flow)))),
    middle !== null && low !== null && high !== null
      ? t.readBlower(saying.quantity('pressure', pa(middle)), saying.range('pressure', pa(low), pa(high)))
      : '',
    asked === null ? '' : t.readDucts(saying.quantity('pressure', pa(asked))),
    load === null ? '' : t.readMotor(saying.percent(load / 100)),
  ]
    .filter(Boolean)
    .join(texts.sentence.comma);
}
