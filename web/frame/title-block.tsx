import { Icon } from '../drawings/icons.tsx';
import { DangerMark, OpenMark, VerdictMark } from '../drawings/marks.tsx';
import { answered, issues, thinking, trouble } from '../state/assessment.ts';
import { job } from '../state/job.ts';
import { hashOf, placeOf, PLACES, route, type Place } from '../state/route.ts';
import { shownBlower } from '../match/chosen.ts';
import { texts } from '../texts/index.ts';
import { verdictLine, type VerdictLine } from '../words/verdict-line.ts';
import { issueWords } from '../words/issue-words.ts';
import { siteLine } from '../words/site-line.ts';

/** The foot of the page, like a drawing's title block: the verdict in one line and the four places. Never scrolls away. */
export function TitleBlock({ wide }: { wide: boolean }) {
  const t = texts.value;
  const here = placeOf(route.value);
  const showLine = wide ? here !== 'match' && here !== 'ducts' : here !== 'match';
  return (
    <footer class="title-block">
      <a class="shop" href={hashOf({ page: 'shop' })}>
        <b>{job.value.name}</b>
        <span class="second">{siteLine(job.value, answered.value?.assessment ?? null, t)}</span>
      </a>
      {showLine ? <Verdict /> : wide ? <span class="verdict-line" /> : null}
      <nav class="places" aria-label={t.places.all}>
        {PLACES.map((place) => (
          <a key={place} href={hashOf({ page: place })} aria-current={isOn(place, here, wide) ? 'page' : undefined}>
            <Icon name={place} />
            <span>{t.places[place]}</span>
          </a>
        ))}
      </nav>
    </footer>
  );
}

/** On a desk ducts and match stand side by side, so both tabs are the place one is in. */
const isOn = (place: Place, here: Place | null, wide: boolean): boolean =>
  place === here || (wide && (place === 'ducts' || place === 'match') && (here === 'ducts' || here === 'match'));

function Verdict() {
  const line = lineNow();
  return (
    <a
      class={thinking.value ? 'verdict-line thinking' : 'verdict-line'}
      href={hashOf({ page: 'match' })}
      aria-live="polite"
    >
      {line.mark === 'trouble' ? (
        <DangerMark size={22} filled />
      ) : line.mark ? (
        <VerdictMark verdict={line.mark} />
      ) : (
        <OpenMark />
      )}
      <span>
        <b>{line.lead}</b>
        {line.rest}
      </span>
    </a>
  );
}

function lineNow(): Omit<VerdictLine, 'mark'> & { mark: VerdictLine['mark'] | 'trouble' } {
  const t = texts.value;
  if (trouble.value) return { mark: 'trouble', lead: t.verdict.failed, rest: '' };
  if (job.value.blowers.length === 0) return { mark: null, lead: t.verdict.noBlower, rest: '' };
  if (issues.value.length > 0)
    return { mark: null, lead: t.verdict.noAnswer, rest: issues.value[0] ? issueWords(issues.value[0], t) : '' };
  const now = answered.value;
  if (!now) return { mark: null, lead: t.verdict.thinking, rest: '' };
  return verdictLine(now.job, now.assessment, blowerLookedAt(), t);
}

/** On a blower's own pages its own verdict; everywhere else the one that match and ducts look at. */
function blowerLookedAt(): string | null {
  const here = route.value;
  if ('blowerId' in here) return here.blowerId;
  return here.page === 'blowers' ? null : (shownBlower.value?.blowerId ?? null);
}
