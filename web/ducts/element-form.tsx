import type { Element } from '../../src/duct/index.ts';
import { QuantityInput } from '../forms/quantity-input.tsx';
import { edit, job } from '../state/job.ts';
import { valueAt, withValueAt } from '../state/pointer.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { CycloneShape } from './cyclone-shape.tsx';
import { ChoiceInput, FlagInput } from './choice-input.tsx';
import { fieldsOf, isEveryday, nameLabel } from './fields.ts';
import type { FieldRow } from './fields.ts';
import { NumberInput } from './number-input.tsx';

/** Every field of one element as a form row, read off its schema: first what most people need, the rest on request. */
export function ElementForm({ element, pointer, texts }: { element: Element; pointer: string; texts: DuctTexts }) {
  const rows = fieldsOf(element.kind);
  const rest = rows.filter((row) => !isEveryday(row));
  return (
    <>
      {element.kind === 'cyclone' && <CycloneShape cyclone={element} pointer={pointer} texts={texts} />}
      <div class="fields">
        {rows.filter(isEveryday).map((row) => (
          <Row key={row.path} row={row} pointer={pointer} texts={texts} />
        ))}
      </div>
      {rest.length > 0 && (
        <details class="more-fields">
          <summary>{texts.piece.more}</summary>
          <div class="fields">
            {rest.map((row) => (
              <Row key={row.path} row={row} pointer={pointer} texts={texts} />
            ))}
          </div>
        </details>
      )}
    </>
  );
}

function Row({ row, pointer, texts }: { row: FieldRow; pointer: string; texts: DuctTexts }) {
  const path = `${pointer}/${row.path}`;
  const label = texts.fieldWords[row.label] ?? row.label;
  switch (row.input) {
    case 'quantity':
      return (
        <QuantityInput
          path={path}
          quantity={row.quantity}
          unit={row.path === 'length_m' || row.path === 'rise_m' ? 'm' : undefined}
          label={label}
          note="element"
          help={row.help}
          required={row.required}
        />
      );
    case 'number':
      return <NumberInput path={path} label={label} help={row.help} required={row.required} />;
    case 'choice':
      return (
        <ChoiceInput
          path={path}
          label={label}
          note="element"
          unsaid={row.required ? null : texts.notSaid}
          options={row.options.map((value) => ({ value, text: texts.nameWords[value] ?? nameLabel(row.path, value) }))}
        />
      );
    case 'flag':
      return (
        <FlagInput
          label={label}
          value={valueAt(job.value, path) === true}
          onChange={(value) => edit('element', (before) => withValueAt(before, path, value))}
        />
      );
  }
}
