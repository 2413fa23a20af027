import type { PlateReading } from '../../src/plate/reading.ts';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';
import { isAskedAnyway } from './asked-anyway.ts';
import { FIGURES } from './plate-fields.ts';

/** Doubts about the plate as a whole; those about one figure stand beside it, and what is asked anyway needs no words here. */
export function PlateWarnings({ reading }: { reading: PlateReading | null }) {
  const t = texts.value;
  const besideFigures = new Set<string>(FIGURES.map(({ name }) => name));
  const whole = (reading?.warnings ?? []).filter(
    ({ code, path }) => !isAskedAnyway(code) && !path.split('/').some((step) => besideFigures.has(step)),
  );
  if (whole.length === 0) return null;
  return (
    <div class="box review" role="status">
      <ul>
        {[...new Set(whole.map((warning) => warningWords(warning, t)))].map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </div>
  );
}
