import { useSignal } from '@preact/signals';
import { voltageUnbalance } from '../../src/motor/index.ts';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { readQuantity } from '../forms/quantity-text.ts';
import { edit } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';

const PATH = '/supply/voltageUnbalance';

/** Volts from the meter between each two lines: three of them give the unbalance, which is what the job keeps. */
export function ThreeVoltages() {
  const t = texts.value.blowers;
  const typed = useSignal<readonly string[]>(['', '', '']);
  const type = (line: number, text: string): void => {
    typed.value = typed.value.map((before, i) => (i === line ? text : before));
  };
  // half a number typed would be a lost phase: only what somebody has left counts
  const take = (): void => {
    const volts = typed.value.flatMap((one) => {
      const read = readQuantity(one, 'voltage', 'V');
      return read.ok && read.si > 0 ? [read.si] : [];
    });
    if (volts.length < typed.value.length) return;
    edit('supply', (before) => withValueAt(before, PATH, voltageUnbalance(volts)));
  };
  return (
    <fieldset class="fields">
      <legend>{t.lineVolts}</legend>
      {typed.value.map((text, line) => (
        <QuantityBox
          key={line}
          label={t.lines[line]!}
          quantity="voltage"
          unit="V"
          text={text}
          onText={(next) => type(line, next)}
          onLeave={take}
        />
      ))}
    </fieldset>
  );
}
