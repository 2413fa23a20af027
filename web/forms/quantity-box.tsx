import { useId } from 'preact/hooks';
import type { Quantity } from '../../src/units/index.ts';
import { DangerMark } from '../drawings/marks.tsx';
import { settings } from '../state/settings.ts';
import { texts } from '../texts/index.ts';
import { echoOf, readQuantity } from './quantity-text.ts';

export type QuantityBoxProps = {
  label: string;
  quantity: Quantity;
  unit: string;
  text: string;
  onText: (text: string) => void;
  onLeave?: () => void;
  /** more that is amiss with the value, found by the check of the whole job */
  amiss?: string;
  help?: string;
  /** shown while nothing is typed: what the program takes instead */
  placeholder?: string;
  /** in a table the head names it: no label, no echo, a number pad */
  inCell?: boolean;
  /** the unit stands beside it: no echo, no unit as placeholder */
  plain?: boolean;
  /** a heading beside the field names it already */
  labelUnseen?: boolean;
};

/** One quantity being typed, in any unit, with its echo or what is wrong with it. Holds no state of its own. */
export function QuantityBox({
  label,
  quantity,
  unit,
  text,
  onText,
  onLeave,
  amiss,
  help,
  placeholder,
  inCell,
  plain,
  labelUnseen,
}: QuantityBoxProps) {
  const id = useId();
  const read = text.trim() === '' ? null : readQuantity(text, quantity, unit);
  const wrong = read && !read.ok ? messageFor(read.message, unit) : amiss;
  const notes = read?.ok
    ? [echoOf(read.si, read.unit, quantity, unit), ...(english() ? read.remarks : [])].filter((note) => note !== '')
    : [];
  return (
    <div class={inCell ? 'field in-cell' : 'field'}>
      {!inCell && (
        <label for={id} class={labelUnseen ? 'unseen' : undefined}>
          {label}
        </label>
      )}
      <input
        id={id}
        class="quantity"
        type="text"
        inputMode={inCell || plain ? 'decimal' : 'text'}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="next"
        value={text}
        placeholder={placeholder ?? (inCell ? '–' : plain ? '' : unit)}
        aria-label={inCell ? label : undefined}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={`${id}-under`}
        onInput={(event) => onText(event.currentTarget.value)}
        onBlur={onLeave}
      />
      <div id={`${id}-under`}>
        {wrong ? (
          <p class="amiss" role="status">
            {!inCell && <DangerMark size={18} filled />} {wrong}
          </p>
        ) : (
          !inCell &&
          !plain && (
            <p class="echo">
              <bdi>{notes.join(' · ')}</bdi>
              {notes.length === 0 && help}
            </p>
          )
        )}
      </div>
    </div>
  );
}

const english = (): boolean => settings.value.language === 'en';

/** The parser words its refusals in English; other languages say the same in one general sentence. */
const messageFor = (message: string, unit: string): string =>
  english() ? message : texts.value.fields.notUnderstood(unit);
