import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { unitsOf } from '../../src/units/index.ts';
import type { ChartReading, Problem } from '../api.ts';
import { Icon } from '../drawings/icons.tsx';
import { OpenMark, VerdictMark } from '../drawings/marks.tsx';
import { removeTap, setTapSpeed } from '../edits/tap-curve.ts';
import { setAxis, withoutSecondAxis, withSecondAxis } from '../edits/set-axis.ts';
import { Either } from '../forms/either.tsx';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { endStep, type Note } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { sayNumber } from '../words/say.ts';
import type { Reader } from './chart-reading.ts';
import { axisHint, UNIT_QUANTITY } from './hints.ts';
import type { AxisId, AxisQuantity, AxisWork, PhotoWork } from './photo-work.ts';
import { problemWords } from './problem-words.ts';

export type Change = (note: Note, how: (before: PhotoWork) => PhotoWork, merge?: string | null) => void;

/** One step of reading a chart: done, doubted or still open by its mark, and what belongs to it. */
function Step({ mark, title, hint, children }: { mark: 'done' | 'doubt' | 'open'; title: string; hint?: string; children?: ComponentChildren }) {
  return (
    <section class="row step">
      {mark === 'open' ? <OpenMark /> : <VerdictMark verdict={mark === 'done' ? 'yes' : 'unsure'} />}
      <div class="grow">
        <h3>{title}</h3>
        {hint && <p class="second">{hint}</p>}
        {children}
      </div>
    </section>
  );
}

/** What the reader doubts at a place of the hints; `/axes/0`, `/frameCorners_px`, `/seeds/1`. */
const doubtsAt = (reading: ChartReading | null, path: string): string[] =>
  (reading?.warnings ?? []).filter((w) => w.path === path || w.path.startsWith(`${path}/`)).map((w) => texts.value.warnings[w.code] ?? w.text);

export function CornersRow({ work, reading }: { work: PhotoWork; reading: ChartReading | null }) {
  const t = texts.value.photo;
  const left = work.placed.filter((placed) => !placed).length;
  const doubts = doubtsAt(reading, '/frameCorners_px');
  if (left > 0) return <Step mark="open" title={t.cornersOpen} hint={t.cornersLeft(sayNumber(left))} />;
  return <Step mark={doubts.length > 0 ? 'doubt' : 'done'} title={t.cornersDone} hint={doubts[0] ?? (reading ? t.snapped : t.cornersHint)} />;
}

const AXIS_INDEX: Record<AxisId, number> = { x: 0, y1: 1, y2: 2 };

export function AxisRow({ axis, reading, change }: { axis: AxisWork; reading: ChartReading | null; change: Change }) {
  const t = texts.value.photo;
  const hint = axisHint(axis);
  const doubts = doubtsAt(reading, `/axes/${AXIS_INDEX[axis.id]}`);
  return (
    <Step mark={hint === null ? 'open' : doubts.length > 0 ? 'doubt' : 'done'} title={t.axis[axis.id]} hint={doubts[0]}>
      {axis.id === 'y1' && <QuantityChoice axis={axis} options={['static_pressure', 'total_pressure']} change={change} />}
      {axis.id === 'y2' && <QuantityChoice axis={axis} options={['shaft_power', 'efficiency']} change={change} />}
      <div class="axis-fields">
        <AxisEnd axis={axis} end="minText" label={t.from} change={change} />
        <AxisEnd axis={axis} end="maxText" label={t.to} change={change} />
        <label class="field">
          <span class="label">{t.unit}</span>
          <select class="ltr" value={axis.unit} onChange={(event) => change('axis', setAxis(axis.id, { unit: event.currentTarget.value }))}>
            {unitsOf(UNIT_QUANTITY[axis.quantity]).map((unit) => (
              <option key={unit.unit} value={unit.unit}>
                {unit.unit}
              </option>
            ))}
          </select>
        </label>
      </div>
      <button
        type="button"
        class="tap"
        aria-pressed={axis.scale === 'log'}
        onClick={() => change('axis', setAxis(axis.id, { scale: axis.scale === 'log' ? 'linear' : 'log' }))}
      >
        {axis.scale === 'log' ? t.logScale : t.evenScale}
      </button>
    </Step>
  );
}

function QuantityChoice({ axis, options, change }: { axis: AxisWork; options: readonly AxisQuantity[]; change: Change }) {
  const t = texts.value.photo;
  const choose = (quantity: AxisQuantity): void => {
    const sameUnits = UNIT_QUANTITY[quantity] === UNIT_QUANTITY[axis.quantity];
    const unit = sameUnits ? axis.unit : (unitsOf(UNIT_QUANTITY[quantity])[0]?.unit ?? axis.unit);
    change('axis', setAxis(axis.id, { quantity, unit }));
  };
  return (
    <Either
      label={t.whatIsIt}
      showLabel={false}
      value={axis.quantity}
      options={options.map((value) => ({ value, text: t.quantities[value] }))}
      onChoose={choose}
    />
  );
}

function AxisEnd({ axis, end, label, change }: { axis: AxisWork; end: 'minText' | 'maxText'; label: string; change: Change }) {
  return (
    <QuantityBox
      label={label}
      quantity={UNIT_QUANTITY[axis.quantity]}
      unit={axis.unit}
      text={axis[end]}
      plain
      onText={(text) => change('axis', setAxis(axis.id, { [end]: text }), `${axis.id} ${end}`)}
      onLeave={endStep}
    />
  );
}

export function CurvesRow({ work, ready, reader, change }: { work: PhotoWork; ready: boolean; reader: Reader; change: Change }) {
  const t = texts.value.photo;
  const { reading, busy } = reader;
  const doubted = work.seeds.some((_, index) => doubtsAt(reading, `/seeds/${index}`).length > 0);
  const title = work.seeds.length === 0 ? t.tapOpen : t.curves(work.seeds.length, sayNumber(work.seeds.length));
  const hint = busy ? t.tracing : work.seeds.length === 0 ? (ready ? t.tapNow : t.tapAfter) : t.tapMore;
  return (
    <Step mark={work.seeds.length === 0 || !reading ? 'open' : doubted ? 'doubt' : 'done'} title={title} hint={hint}>
      {work.seeds.map((seed, index) => (
        <div key={seed.id} class="seed-row">
          <svg width="30" height="12" aria-hidden="true">
            <path d="M0 6H30" class="on-photo-air sample" stroke-width="3" stroke-dasharray={seed.yAxis === 'y1' ? undefined : '8 5'} />
          </svg>
          <QuantityBox
            label={t.speedOf(t.quantities[work.axes.find((axis) => axis.id === seed.yAxis)?.quantity ?? 'static_pressure'])}
            quantity="speed"
            unit="rpm"
            text={seed.speedText}
            help={doubtsAt(reading, `/seeds/${index}`)[0] ?? t.speedHelp}
            onText={(text) => change('seed', setTapSpeed(seed.id, text), `speed ${seed.id}`)}
            onLeave={endStep}
          />
          <button type="button" class="icon" aria-label={t.removeCurve(String(index + 1))} onClick={() => change('seed', removeTap(seed.id))}>
            <Icon name="bin" />
          </button>
        </div>
      ))}
    </Step>
  );
}

type SecondAxis = { axis: AxisWork | null; reading: ChartReading | null; tapsGoTo: Signal<AxisId>; change: Change };

/** Many charts show power or efficiency on a second scale: asked for only when wanted. */
export function SecondAxisRow({ axis, reading, tapsGoTo, change }: SecondAxis) {
  const t = texts.value.photo;
  const add = (): void => {
    change('axis', withSecondAxis);
    tapsGoTo.value = 'y2';
  };
  const remove = (): void => {
    change('axis', withoutSecondAxis);
    tapsGoTo.value = 'y1';
  };
  if (!axis) {
    return (
      <button type="button" class="tap" onClick={add}>
        {t.addSecond}
      </button>
    );
  }
  return (
    <>
      <AxisRow axis={axis} reading={reading} change={change} />
      <Either
        label={t.nextTap}
        value={tapsGoTo.value}
        options={[
          { value: 'y1' as AxisId, text: t.quantities.static_pressure },
          { value: 'y2' as AxisId, text: t.quantities[axis.quantity] },
        ]}
        onChoose={(id) => (tapsGoTo.value = id)}
      />
      <button type="button" class="tap" onClick={remove}>
        {t.removeSecond}
      </button>
    </>
  );
}

export function AirRow({ work, change }: { work: PhotoWork; change: Change }) {
  const t = texts.value.photo;
  return (
    <Step mark={work.airDensityText.trim() === '' ? 'doubt' : 'done'} title={t.air} hint={t.airHint}>
      <div class="axis-fields">
        <QuantityBox
          label={texts.value.blowers.airWeight}
          quantity="density"
          unit="kg/m³"
          text={work.airDensityText}
          placeholder="1.2 kg/m³"
          onText={(text) => change('axis', (before) => ({ ...before, airDensityText: text }), 'air')}
          onLeave={endStep}
        />
      </div>
    </Step>
  );
}

/** What stands in the way of using it, or has to be looked at before. */
export function ReviewRow({ reading, problem }: { reading: ChartReading | null; problem: Problem | null }) {
  const t = texts.value.photo;
  if (problem) {
    const words = problem.errors.map((error) => error.message);
    return (
      <div class="box review" role="alert">
        <h3>{t.notRead}</h3>
        <p>{words.length > 0 ? words.join(' ') : problemWords(problem, texts.value)}</p>
      </div>
    );
  }
  if (!reading?.confidence.needsReview) return null;
  return (
    <div class="box review" role="status">
      <h3>{t.lookAgain}</h3>
      <ul>
        {reading.warnings.map((warning) => (
          <li key={warning.code + warning.path}>{texts.value.warnings[warning.code] ?? warning.text}</li>
        ))}
      </ul>
    </div>
  );
}
