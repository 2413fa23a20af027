import type { BudgetPart } from '../../src/assessment.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { sayIn } from '../words/say.ts';
import { biggest, sharesOf } from './budget-shares.ts';

/** Where the blower's pressure goes, as a bar whose pieces carry the texture of what eats them, and one sentence about the biggest. */
export function Budget({ parts, caption, texts }: { parts: readonly BudgetPart[]; caption: string; texts: DuctTexts }) {
  const t = texts.budget;
  const shares = sharesOf(parts);
  const most = biggest(shares);
  return (
    <section class="budget">
      <h2>
        {t.title} <small>{caption}</small>
      </h2>
      <div class="budget-pieces" aria-hidden="true">
        {shares.map(({ part, share }) => (
          <i key={part} class={`texture ${part}`} style={{ flexGrow: share }} />
        ))}
      </div>
      <ul class="budget-list">
        {shares.map(({ part, pressure_Pa }) => (
          <li key={part} class={part === most?.part ? 'most' : ''}>
            <i class={`texture ${part}`} aria-hidden="true" />
            <span>{t.parts[part]}</span>
            <bdi>{sayIn('pressure', pressure_Pa)}</bdi>
          </li>
        ))}
      </ul>
      <p>{most ? t.most[most.part] : t.none}</p>
    </section>
  );
}
