import { remarksAt } from '../state/remarks.ts';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';

/** What the program doubts about a test as a whole, in its own words; what it doubts about one row stands at that row. */
export function EvidenceRemarks({ path }: { path: string }) {
  const warnings = remarksAt(path).filter((w) => !w.path.startsWith(`${path}/rows/`));
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
