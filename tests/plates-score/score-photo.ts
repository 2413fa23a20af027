import type { PlateTruth } from '../../fixtures/generate/plate/truth.ts';
import { claimOf, isEmpty, judge, PLATE_FIELDS, sameValue, SHEET_FIELDS, type Claim, type Verdict } from './judge.ts';

/** What the program said: fields by name, and the cells of a sheet in SI. */
export type PlateAnswer = {
  fields: Record<string, unknown>;
  columns?: { quantity?: string }[];
  rows?: unknown[][];
  cells?: ({ confidence?: number; needsReview?: boolean } | null)[][];
  warnings?: unknown[];
};

/** One thing judged: a field, a cell (`name` is then its column), something that nobody can read or that is not there. */
export type Judged = {
  name: string;
  where: 'field' | 'identity' | 'cell' | 'unreadable' | 'invented';
  verdict: Verdict | 'leftOpen' | 'guessed';
  sure: boolean;
  printed: string;
  read: string;
};

export type PhotoScore = {
  truth: PlateTruth;
  judged: Judged[];
  noticed: { name: string; flagged: boolean }[];
  seconds: number;
  refusal: string | null;
};

/** Marks of the machine, judged apart: nothing is calculated from them. */
const IDENTITY = new Set(['serialNumber', 'frameSize']);

/** Judges an answer against what stands on the photo, by the rules the truth's format comes with. */
export function scorePlate(
  truth: PlateTruth,
  answer: PlateAnswer | null,
  refusal: string | null,
  seconds: number,
): PhotoScore {
  const fields = answer?.fields ?? {};
  const judged: Judged[] = [];
  for (const [name, value] of Object.entries(truth.fields)) {
    const claim = claimOf(fields[name]);
    judged.push({
      name,
      where: IDENTITY.has(name) ? 'identity' : 'field',
      ...verdictOf(judge(name, value, claim), claim),
      printed: `${truth.asPrinted[name]} = ${JSON.stringify(value)}`,
      read: said(claim, fields[name]),
    });
  }
  for (const name of truth.unreadable) {
    const claim = claimOf(fields[name]);
    const lost = truth.lost?.fields[name];
    const open = isEmpty(claim.value) || claim.needsReview;
    const verdict = open
      ? 'leftOpen'
      : lost !== undefined && sameValue(name, lost, claim.value)
        ? 'guessed'
        : 'silentlyWrong';
    judged.push({
      name,
      where: 'unreadable',
      verdict,
      sure: !claim.needsReview,
      printed: 'unreadable',
      read: said(claim, fields[name]),
    });
  }
  const known = truth.kind === 'readings-sheet' ? SHEET_FIELDS : PLATE_FIELDS;
  for (const name of Object.keys(fields)) {
    const claim = claimOf(fields[name]);
    const expected = name in truth.fields || truth.unreadable.includes(name);
    if (!known.includes(name) || expected || isEmpty(claim.value) || claim.needsReview || claim.derived) continue;
    judged.push({
      name,
      where: 'invented',
      verdict: 'silentlyWrong',
      sure: true,
      printed: 'not there',
      read: said(claim, fields[name]),
    });
  }
  if (truth.table) judged.push(...scoreCells(truth.table, answer));
  const noticed = truth.wrong.map((name) => ({ name, flagged: claimOf(fields[name]).needsReview }));
  return { truth, judged, noticed, seconds, refusal };
}

const verdictOf = (verdict: Verdict, { needsReview }: Claim) => ({
  verdict,
  sure: verdict === 'right' && !needsReview,
});

function said({ value, needsReview }: Claim, raw: unknown): string {
  const printed = (raw as { asPrinted?: unknown } | null | undefined)?.asPrinted;
  const shown = typeof printed === 'string' ? ` from “${printed}”` : '';
  return `${JSON.stringify(value ?? null)}${shown}${needsReview ? ' (flagged)' : ''}`;
}

function scoreCells(table: NonNullable<PlateTruth['table']>, answer: PlateAnswer | null): Judged[] {
  const columns = answer?.columns ?? [];
  // a column that names another quantity is not this one
  const at = table.columns.map(({ key }, k) => {
    const found = columns.findIndex((c) => c.quantity === key);
    return found >= 0 ? found : columns[k]?.quantity ? -1 : k;
  });
  const claim = (row: number, column: number) =>
    claimOf({ value: answer?.rows?.[row]?.[at[column]!] ?? null, ...answer?.cells?.[row]?.[at[column]!] });
  const judged = table.rowsSI.flatMap((row, i) =>
    row.map((value, j): Judged => {
      const c = claim(i, j);
      const { key } = table.columns[j]!;
      const name = key === 'speed_rpm' ? key : 'cell';
      const verdict =
        value !== null
          ? judge(name, value, c)
          : isEmpty(c.value)
            ? 'right'
            : c.needsReview
              ? 'flagged'
              : 'silentlyWrong';
      const place = `row ${i + 1}: ${table.asPrinted[i]![j] ?? 'empty'} = ${value}`;
      return { name: key, where: 'cell', ...verdictOf(verdict, c), printed: place, read: said(c, null) };
    }),
  );
  // rows that are not there
  for (let i = table.rowsSI.length; i < (answer?.rows?.length ?? 0); i++)
    table.columns.forEach(({ key }, j) => {
      const c = claim(i, j);
      if (!isEmpty(c.value) && !c.needsReview)
        judged.push({
          name: key,
          where: 'cell',
          verdict: 'silentlyWrong',
          sure: true,
          printed: `row ${i + 1}: not there`,
          read: said(c, null),
        });
    });
  return judged;
}
