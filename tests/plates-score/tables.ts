import type { Judged, PhotoScore } from './score-photo.ts';

type Row = Record<string, string | number>;

const percent = (part: number, whole: number) => (whole ? `${((100 * part) / whole).toFixed(1)} %` : '–');
const count = <T>(list: readonly T[], is: (item: T) => boolean) => list.filter(is).length;

const isSilent = ({ verdict }: Judged) => verdict === 'silentlyWrong';
const isInvented = ({ where }: Judged) => where === 'invented';

const shares = (judged: readonly Judged[]): Row => ({
  right: percent(
    count(judged, (j) => j.verdict === 'right'),
    judged.length,
  ),
  unflagged: percent(
    count(judged, (j) => j.sure && j.verdict === 'right'),
    judged.length,
  ),
  flagged: percent(
    count(judged, (j) => j.verdict === 'flagged'),
    judged.length,
  ),
  'silently wrong': count(judged, isSilent),
});

/** What the goals are about, by grade, by kind, and together. */
export function gradeTable(all: readonly PhotoScore[]): Record<string, Row> {
  const table: Record<string, Row> = {};
  const groups: [string, (s: PhotoScore) => boolean][] = [
    ...(['easy', 'normal', 'hard'] as const).map((g): [string, (s: PhotoScore) => boolean] => [
      g,
      (s) => s.truth.difficulty === g,
    ]),
    ...(['motor-plate', 'blower-plate', 'readings-sheet'] as const).map((k): [string, (s: PhotoScore) => boolean] => [
      k,
      (s) => s.truth.kind === k,
    ]),
    ['all', () => true],
  ];
  for (const [name, belongs] of groups) {
    const scores = all.filter(belongs);
    if (!scores.length) continue;
    const judged = scores.flatMap((s) => s.judged);
    const fields = judged.filter((j) => j.where === 'field');
    const cells = judged.filter((j) => j.where === 'cell');
    const noticed = scores.flatMap((s) => s.noticed);
    const times = scores.map((s) => s.seconds).toSorted((a, b) => a - b);
    table[name] = {
      photos: scores.length,
      fields: fields.length,
      ...shares(fields),
      invented: count(judged, isInvented),
      'wrong or invented': percent(count(judged, isSilent), judged.length - count(judged, isInvented)),
      unreadable: `${count(judged, (j) => j.where === 'unreadable' && j.verdict === 'leftOpen')}/${count(judged, (j) => j.where === 'unreadable')} open`,
      noticed: `${count(noticed, (n) => n.flagged)}/${noticed.length}`,
      'cells right': percent(
        count(cells, (j) => j.verdict === 'right'),
        cells.length,
      ),
      'cells unflagged': percent(
        count(cells, (j) => j.sure && j.verdict === 'right'),
        cells.length,
      ),
      'cells silent': percent(count(cells, isSilent), cells.length),
      'median s': times[Math.floor(times.length / 2)]!.toFixed(1),
    };
  }
  return table;
}

/** Each field of plates and each column of sheets on its own. */
export function fieldTable(all: readonly PhotoScore[]): Record<string, Row> {
  const judged = all.flatMap((s) =>
    s.judged.map((j) => ({ ...j, name: j.where === 'cell' ? `cell ${j.name}` : j.name })),
  );
  const names = [...new Set(judged.map((j) => j.name))].toSorted();
  return Object.fromEntries(
    names.map((name) => {
      const own = judged.filter((j) => j.name === name);
      const there = own.filter((j) => ['field', 'identity', 'cell'].includes(j.where));
      return [name, { there: there.length, ...shares(there), invented: count(own, isInvented) }];
    }),
  );
}

/** What was claimed and is not so, with what is printed and what was read. */
export function silentLines({ truth, judged }: PhotoScore): string[] {
  return judged
    .filter(isSilent)
    .map(
      ({ where, name, printed, read }) =>
        `    ${where === 'invented' ? 'INVENTED' : 'WRONG'} ${name}: printed ${printed}, read ${read}  [${truth.conditions}]`,
    );
}

/** One line per photo. */
export function photoLine({ truth, judged, seconds, refusal }: PhotoScore): string {
  const fields = judged.filter((j) => j.where === 'field' || j.where === 'identity');
  const cells = judged.filter((j) => j.where === 'cell');
  const right = (list: Judged[]) =>
    `${count(list, (j) => j.verdict === 'right')}/${list.length} (${count(list, (j) => j.sure && j.verdict === 'right')})`;
  const missing = fields.filter((j) => j.verdict === 'flagged').map((j) => j.name);
  return [
    truth.id.padEnd(9),
    truth.difficulty.padEnd(6),
    truth.kind.padEnd(14),
    `${seconds.toFixed(1)}s`,
    `fields ${right(fields)}`,
    cells.length ? `cells ${right(cells)}` : '',
    missing.length ? `not read: ${missing.join(' ')}` : '',
    refusal ?? '',
  ]
    .filter(Boolean)
    .join('  ');
}
