import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';
import type { SheetReading } from './sheet-reading.ts';

/** What is doubted about the sheet as a whole. */
export function SheetWarnings({ reading }: { reading: SheetReading }) {
  const words = [...new Set(reading.warnings.map((warning) => warningWords(warning, texts.value)))];
  if (words.length === 0) return null;
  return (
    <div class="box review" role="status">
      <ul>
        {words.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}
