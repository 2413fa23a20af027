import { TopBar } from '../frame/top-bar.tsx';
import { BlowerChooser } from '../match/match-place.tsx';
import { shownBlower, shownPlans } from '../match/chosen.ts';
import { namesIn } from '../match/names.ts';
import { verdictSentence } from '../match/sentence.ts';
import { useWidth } from '../match/use-width.ts';
import { answered } from '../state/assessment.ts';
import { texts } from '../texts/index.ts';
import { cardModel } from './card-model.ts';
import { CardPage, cardDangers } from './card-page.tsx';
import './card.css';

/** Width of an A4 page at 96 px to the inch. */
const A4_PX = 794;

/** The card: one page for the wall, shown as it will be printed. */
export function CardPlace() {
  const all = texts.value;
  const t = all.card;
  const now = answered.value;
  const result = shownBlower.value;
  const blower = now?.job.blowers.find((one) => one.id === result?.blowerId);
  const [box, width] = useWidth<HTMLDivElement>(358);
  const fit = Math.min(1, width / A4_PX);
  const names = now && namesIn(now.job, all.match);
  const said = result && names ? verdictSentence(shownPlans.value, result, names, all.match) : '';
  const { oneAtATime, mixed } = all.match.sentence;
  const headline = (said === oneAtATime ? mixed : said).replace(/[.۔]$/, '');
  return (
    <div class="card-place">
      <TopBar>
        <div class="grow">{blower ? <BlowerChooser /> : <h1>{t.title}</h1>}</div>
      </TopBar>
      {now && result && blower && names ? (
        <>
          <div class="card-actions">
            <button type="button" class="press fill" onClick={() => print()}>
              {t.print}
            </button>
            <p class="second">{t.hint}</p>
          </div>
          <div class="paper" ref={box} style={{ '--fit': fit }}>
            <CardPage
              job={now.job}
              blower={blower}
              model={cardModel(now.job, now.assessment, blower, result)}
              headline={headline}
              dangers={cardDangers(result.reasons, all)}
              names={names}
              texts={all}
            />
          </div>
        </>
      ) : (
        <p class="nothing" ref={box}>
          {t.empty}
        </p>
      )}
    </div>
  );
}
