import type { Signal } from '@preact/signals';
import { unitsOf } from '../../src/units/index.ts';
import type { ChartReading } from '../api.ts';
import { setAxis, withoutSecondAxis, withSecondAxis } from '../edits/set-axis.ts';
import { Either } from '../forms/either.tsx';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { endStep } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { axisHint, UNIT_QUANTITY } from './hints.ts';
import type { AxisId, AxisQuantity, AxisWork } from './photo-work.ts';
import { unitLabel } from './unit-labels.ts';
import { doubtsAt, Step, type Change } from './step.tsx';

export function AxisRow({ axis, reading, change }: { axis: AxisWork; reading: ChartReading | null; change: Change }) {
  const t = texts.value.photo;
  const hint = axisHint(axis);
  const doubts = doubtsAt(reading, `/axes/${reading?.axes.findIndex(({ id }) => id === axis.id) ?? 0}`);
  const scale = (
    <button
      type="button"
      class="tap"
      aria-pressed={axis.scale === 'log'}
      onClick={() => change('axes', setAxis(axis.id, { scale: axis.scale === 'log' ? 'linear' : 'log' }))}
    >
      {axis.scale === 'log' ? t.logScale : t.evenScale}
    </button>
  );
  return (
    <Step
      mark={hint === null ? 'open' : doubts.length > 0 ? 'doubt' : 'done'}
      title={titleOf(axis.id)}
      hint={doubts[0]}
      side={scale}
    >
      {axis.id === 'y1' && (
        <QuantityChoice axis={axis} options={['static_pressure', 'total_pressure']} change={change} />
      )}
      {isFurther(axis.id) && <QuantityChoice axis={axis} options={['shaft_power', 'efficiency']} change={change} />}
      <div class="axis-fields">
        <AxisEnd axis={axis} end="minText" label={t.from} change={change} />
        <AxisEnd axis={axis} end="maxText" label={t.to} change={change} />
        <label class="field">
          <span class="label">{t.unit}</span>
          <select
            class="ltr"
            value={axis.unit}
            onChange={(event) => change('axes', setAxis(axis.id, { unit: event.currentTarget.value }))}
          >
            {unitsOf(UNIT_QUANTITY[axis.quantity]).map((unit) => (
              <option key={unit.unit} value={unit.unit}>
                {unitLabel(unit.unit)}
              </option>
            ))}
          </select>
        </label>
      </div>
    </Step>
  );
}

const isFurther = (id: AxisId): boolean => id !== 'x' && id !== 'y1';

function titleOf(id: AxisId): string {
  const t = texts.value.photo.axis;
  return id === 'x' || id === 'y1' ? t[id] : t.y2;
}

function QuantityChoice({
  axis,
  options,
  change,
}: {
  axis: AxisWork;
  options: readonly AxisQuantity[];
  change: Change;
}) {
  const t = texts.value.photo;
  const choose = (quantity: AxisQuantity): void => {
    const sameUnits = UNIT_QUANTITY[quantity] === UNIT_QUANTITY[axis.quantity];
    const unit = sameUnits ? axis.unit : (unitsOf(UNIT_QUANTITY[quantity])[0]?.unit ?? axis.unit);
    change('axes', setAxis(axis.id, { quantity, unit }));
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

function AxisEnd({
  axis,
  end,
  label,
  change,
}: {
  axis: AxisWork;
  end: 'minText' | 'maxText';
  label: string;
  change: Change;
}) {
  return (
    <QuantityBox
      label={label}
      quantity={UNIT_QUANTITY[axis.quantity]}
      unit={axis.unit}
      text={axis[end]}
      plain
      onText={(text) => change('axes', setAxis(axis.id, { [end]: text }), `${axis.id} ${end}`)}
      onLeave={endStep}
    />
  );
}

type SecondAxis = { axis: AxisWork | null; reading: ChartReading | null; tapsGoTo: Signal<AxisId>; change: Change };

/** Many charts show power or efficiency on a second scale: asked for only when wanted. */
export function SecondAxisRow({ axis, reading, tapsGoTo, change }: SecondAxis) {
  const t = texts.value.photo;
  const add = (): void => {
    change('axes', withSecondAxis);
    tapsGoTo.value = 'y2';
  };
  const remove = (): void => {
    change('curves', withoutSecondAxis);
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
