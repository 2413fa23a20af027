import { useId } from 'preact/hooks';
import type { Blower } from '../../src/job/types.ts';
import { edit, endStep, halfTyped, setHalfTyped } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';
import { priceText, readPrice } from './price-text.ts';

/** What is asked for it, as one says it: "9,000 KES". */
export function PricePart({ blower, path }: { blower: Blower; path: string }) {
  const id = useId();
  const t = texts.value.blowers;
  const pointer = `${path}/price`;
  const text = halfTyped.value[pointer] ?? priceText(blower.price);
  const take = (next: string): void => {
    const price = readPrice(next);
    setHalfTyped(pointer, next);
    if (price !== 'not-a-price') edit('value', (before) => withValueAt(before, pointer, price ?? undefined), pointer);
  };
  const leave = (): void => {
    if (readPrice(text) !== 'not-a-price') setHalfTyped(pointer, null);
    endStep();
  };
  return (
    <div class="field">
      <label for={id}>{t.price}</label>
      <input
        id={id}
        class="quantity"
        value={text}
        placeholder="9,000 KES"
        aria-invalid={readPrice(text) === 'not-a-price' ? true : undefined}
        onInput={(event) => take(event.currentTarget.value)}
        onBlur={leave}
      />
      <p class="echo">{readPrice(text) === 'not-a-price' ? t.priceAmiss : ''}</p>
    </div>
  );
}
