import type { PhotoScore } from './score-photo.ts';
import type { StepScore } from './score-steps.ts';

export type Scored = PhotoScore & { steps: StepScore };

const GRADES = ['easy', 'normal', 'hard'] as const;

export const quantile = (values: readonly number[], q: number): number | null => {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted.length ? sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))]! : null;
};

const percent = (part: number, whole: number) => (whole ? `${Math.round((100 * part) / whole)} %` : '–');
const shown = (value: number | null, decimals: number, unit: string) =>
  value === null ? '–' : `${value.toFixed(decimals)} ${unit}`;
const count = <T>(list: readonly T[], is: (item: T) => boolean) => list.filter(is).length;

/** One line per photo, what was found and what misled. */
export function photoLine({
  truth,
  verdict,
  flagged,
  seconds,
  curves,
  strays,
  steps,
  dangers,
  refusal,
  reading,
}: Scored): string {
  const found = curves.map(({ truth: c, closeness }) => {
    const name = `${c.id}${c.primary ? '*' : ''}`;
    return closeness
      ? `${name}:${(100 * closeness.rms).toFixed(2)}%/${Math.round(100 * closeness.coverage)}%`
      : `${name}:–`;
  });
  const codes = reading ? [...new Set(reading.warnings.map((w) => w.code))] : [];
  return [
    truth.id.padEnd(10),
    truth.difficulty.padEnd(6),
    `${verdict}${flagged && verdict === 'good' ? ' (flagged)' : ''}`.padEnd(14),
    `${seconds.toFixed(1)}s`,
    `frame ${steps.frameFound ? (steps.upright ? 'yes' : 'turned') : 'no'}`,
    `axes ${steps.axesRight}/${steps.axesAsked}${steps.axisFaults.length ? ` (${steps.axisFaults.join(', ')})` : ''}`,
    found.join(' '),
    strays.length ? `${strays.length} stray` : '',
    dangers.join('; '),
    codes.join(' '),
    refusal ?? '',
  ]
    .filter(Boolean)
    .join('  ');
}

/** What the goals are about, by grade. */
export function gradeTable(all: readonly Scored[]): Record<string, Record<string, string | number>> {
  return byGrade(all, (scores) => {
    const curves = scores.flatMap((s) => s.curves);
    const primary = curves.filter((c) => c.truth.primary);
    const rms = curves.flatMap((c) => (c.closeness ? [c.closeness.rms * 100] : []));
    const good = scores.filter((s) => s.verdict === 'good');
    return {
      photos: scores.length,
      good: percent(good.length, scores.length),
      'of these no flag': percent(
        count(good, (s) => !s.flagged),
        good.length,
      ),
      wrong: count(scores, (s) => s.verdict === 'wrong'),
      'primary good': `${count(primary, (c) => c.good)}/${primary.length}`,
      'all good': `${count(curves, (c) => c.good)}/${curves.length}`,
      strays: scores.reduce((sum, s) => sum + s.strays.length, 0),
      'median rms': shown(quantile(rms, 0.5), 3, '%'),
      'p95 rms': shown(quantile(rms, 0.95), 2, '%'),
      'median time': shown(
        quantile(
          scores.map((s) => s.seconds),
          0.5,
        ),
        1,
        's',
      ),
    };
  });
}

/** How far the reading came: each step only where the one before it was right. */
export function stepTable(all: readonly Scored[]): Record<string, Record<string, string | number>> {
  return byGrade(all, (scores) => {
    const framed = scores.filter((s) => s.steps.frameFound);
    const upright = framed.filter((s) => s.steps.upright);
    const scaled = upright.filter((s) => s.steps.axesRight === s.steps.axesAsked);
    const curves = scaled.flatMap((s) => s.curves);
    const named = scores.flatMap((s) => s.curves).filter((c) => c.speedRight !== null && c.read);
    return {
      'frame found': percent(framed.length, scores.length),
      'corners off': shown(
        quantile(
          framed.map((s) => s.steps.corners_px!),
          0.5,
        ),
        1,
        'px',
      ),
      'right way up': percent(upright.length, framed.length),
      'axes right': percent(
        sum(upright, (s) => s.steps.axesRight),
        sum(upright, (s) => s.steps.axesAsked),
      ),
      'all axes right': percent(scaled.length, upright.length),
      'curves found': percent(
        count(curves, (c) => c.read !== null),
        curves.length,
      ),
      'curves good': percent(
        count(curves, (c) => c.good),
        curves.length,
      ),
      'speeds right': percent(
        count(named, (c) => c.speedRight === true),
        named.length,
      ),
      'flags right': percent(
        count(scores, (s) => s.steps.flagRight),
        scores.length,
      ),
    };
  });
}

const sum = <T>(list: readonly T[], of: (item: T) => number) => list.reduce((total, item) => total + of(item), 0);

function byGrade(all: readonly Scored[], row: (scores: Scored[]) => Record<string, string | number>) {
  const table: Record<string, Record<string, string | number>> = {};
  for (const grade of GRADES) {
    const scores = all.filter((s) => s.truth.difficulty === grade);
    if (scores.length) table[grade] = row(scores);
  }
  table.all = row([...all]);
  return table;
}
