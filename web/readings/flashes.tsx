import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { ReadingsEvidence } from '../../src/job/types.ts';
import { energyMeterPower } from '../../src/readings/index.ts';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { readQuantity } from '../forms/quantity-text.ts';
import { edit, endStep } from '../state/job.ts';
import { withTyped } from '../state/as-typed.ts';
import { texts } from '../texts/index.ts';
import { isolated, say } from '../words/say.ts';

/** Power in without a watt meter: the flashes of the energy meter are counted against a watch, and the watts go into a row. */
export function Flashes({ path, evidence }: { path: string; evidence: ReadingsEvidence }) {
  const t = texts.value.readings.flashes;
  const flashes = useSignal('');
  const time = useSignal('');
  const perkWh = useSignal('');
  const power_W = powerOf(flashes.value, time.value, perkWh.value);
  const { rows } = evidence;
  const put = (row: number): void => {
    if (power_W === null) return;
    const target = `${path}/rows/${row}/inputPower_W`;
    edit('row', (before) => withTyped(before, target, power_W, null), target);
    endStep();
  };
  return (
    <details class="unfold flashes">
      <summary class="tap">{t.title}</summary>
      <p class="second">{t.hint}</p>
      <div class="fields">
        <Figure label={t.count} text={flashes.value} onText={(text) => (flashes.value = text)} />
        <QuantityBox label={t.time} quantity="time" unit="s" text={time.value} onText={(text) => (time.value = text)} />
        <Figure label={t.perkWh} text={perkWh.value} onText={(text) => (perkWh.value = text)} />
      </div>
      {power_W !== null && (
        <>
          <p>
            {t.power} <b>{isolated(say('power', power_W, 'W'))}</b>
          </p>
          {rows.length > 0 && (
            <div class="flash-rows" role="group" aria-label={t.into}>
              <span>{t.into}</span>
              {rows.map((row, i) => (
                <button
                  key={i}
                  type="button"
                  class={row.inputPower_W == null ? 'press' : 'press taken'}
                  aria-label={t.intoRow(String(i + 1))}
                  onClick={() => put(i)}
                >
                  {i + 1}
                </button>
              ))}
            </div>
          )}
        </>
      )}
    </details>
  );
}

/** A plain count, as it is read from the meter. */
function Figure({ label, text, onText }: { label: string; text: string; onText: (text: string) => void }) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        class="quantity"
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={text}
        onInput={(event) => onText(event.currentTarget.value)}
      />
    </div>
  );
}

/** null while a figure is missing or makes no sense. */
function powerOf(flashes: string, time: string, perkWh: string): number | null {
  const [count, seconds, constant] = [figureOf(flashes), readQuantity(time, 'time', 's'), figureOf(perkWh)];
  if (count === null || constant === null || !seconds.ok || seconds.si <= 0) return null;
  return energyMeterPower(count, seconds.si, constant);
}

/** A positive count, also with Eastern digits and a comma; read as a share of one, which has no unit of its own. */
function figureOf(text: string): number | null {
  const read = readQuantity(text, 'fraction', '1');
  return read.ok && read.si > 0 ? read.si : null;
}
