import { around, type Box } from '../layout/boxes.ts';
import type { FieldName } from '../reading.ts';
import type { Settled, SettledPart } from './settled.ts';

/** One value a field may have, all its places together. */
export type Value = {
  readonly parts: readonly (number | string)[];
  /** how many of the parts stand in the first place: those of the first rating */
  readonly inFirst: number;
  readonly printed: string;
};

/** A field with what it may be; what the shares leave open is the chance that it is something else. */
export type Opinion = {
  readonly field: FieldName;
  readonly settled: Settled;
  readonly box: Box;
  /** likeliest first */
  readonly choices: readonly { readonly value: Value; readonly share: number }[];
};

const MOST_CHOICES = 5;

/** The values of each field with their chances, before anything is held against anything. */
export function opinionsOf(settled: readonly Settled[]): Opinion[] {
  return settled.map((field) => ({
    field: field.field,
    settled: field,
    box: around(field.parts.map(({ candidate }) => candidate.alternatives[0]!.box)),
    choices: choicesOf(field.parts),
  }));
}

function choicesOf(parts: readonly SettledPart[]): Opinion['choices'] {
  let choices: { value: Value; share: number }[] = [{ value: { parts: [], inFirst: 0, printed: '' }, share: 1 }];
  for (const { candidate, chance } of parts) {
    choices = choices
      .flatMap(({ value, share }) =>
        candidate.alternatives.slice(0, MOST_CHOICES).map((alternative) => ({
          value: {
            parts: [...value.parts, ...(alternative.numbers ?? [alternative.code!])],
            inFirst: value.inFirst || (alternative.numbers?.length ?? 1),
            printed: value.printed === '' ? alternative.printed : `${value.printed} / ${alternative.printed}`,
          },
          share: share * chance * alternative.share,
        })),
      )
      .toSorted((a, b) => b.share - a.share)
      .slice(0, MOST_CHOICES);
  }
  return choices;
}
