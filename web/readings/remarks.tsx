import { answered } from '../state/assessment.ts';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';

/** What the program doubts about this piece of evidence, in its own words, under the readings it is about. */
export function EvidenceRemarks({ path }: { path: string }) {
  const warnings = (answered.value?.assessment.warnings ?? []).filter(
    (w) => w.path === path || w.path.startsWith(`${path}/`),
  );
  if (warnings.length === 0) return null;
  return (
    <div class="box remarks" role="status">
      <h2 class="small-head">{texts.value.readings.doubts}</h2>
      <ul>
        {warnings.map((warning) => (
          <li key={warning.code + warning.path}>{warningWords(warning, texts.value)}</li>
        ))}
      </ul>
    </div>
  );
}
