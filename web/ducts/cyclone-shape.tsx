import { tables, type Element } from '../../src/duct/index.ts';
import { shapeOf, withCycloneShape } from '../edits/cyclone-shape.ts';
import { Either } from '../forms/either.tsx';
import { edit } from '../state/job.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';

type Props = { cyclone: Extract<Element, { kind: 'cyclone' }>; pointer: string; texts: DuctTexts };

/** Plain drum or proportions that cyclones are built to: a tap fills in inlet and outlet. */
export function CycloneShape({ cyclone, pointer, texts }: Props) {
  const { cyclone: words } = texts;
  return (
    <Either
      label={words.builtTo}
      value={shapeOf(cyclone) ?? 'drum'}
      options={['drum' as const, ...tables.CYCLONE_SHAPES].map((value) => ({ value, text: words.shapes[value]! }))}
      onChoose={(shape) =>
        shape !== 'drum' && edit('element', (before) => withCycloneShape(before, pointer, cyclone, shape))
      }
    />
  );
}
