import type { BlowerResult, Reason } from '../../src/assessment.ts';
import type { Blower } from '../../src/job/types.ts';
import { Caution } from '../cautions/caution.tsx';
import { DangerMark } from '../drawings/marks.tsx';
import { namesIn } from '../match/names.ts';
import { saying } from '../match/say.ts';
import { reasonText } from '../match/why.ts';
import { answered } from '../state/assessment.ts';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';
import { LoadPicture } from './load-picture.tsx';
import { MotorFacts } from './motor-facts.tsx';
import './worst-day.css';

/** Reasons about the motor's mains and cooling that the bars and facts do not show themselves. */
const SAID_HERE: ReadonlySet<string> = new Set([
  'single-phase-feed',
  'voltage-mismatch',
  'voltage-unbalance',
  'derated-overload',
  'hot-or-high',
  'dc-supply',
  'self-cooled-motor',
  'weak-start',
  'faster-than-tested',
]);
/** Warnings of the core that belong beside the motor. */
const WARNED_HERE: ReadonlySet<string> = new Set(['other-frequency', 'over-fluxed', 'star-delta', 'rewound']);

/** What the motor carries where it is worst, what the evening does to it, and how far it may go. */
export function WorstDayPart({ blower, path }: { blower: Blower; path: string }) {
  const t = texts.value;
  const now = answered.value;
  const result = now?.assessment.blowers.find((b) => b.blowerId === blower.id);
  const day = result?.worstDay;
  return (
    <section class="part worst-day">
      <h2>{t.blowers.worst.title}</h2>
      {now && result && day?.heaviest ? (
        <>
          <LoadPicture day={day} planName={planName(day.heaviest.gatePlan)} />
          <MotorFacts day={day} />
        </>
      ) : (
        <p class="second">{t.blowers.worst.waits}</p>
      )}
      {result && <Said result={result} path={path} />}
      {day?.openLoad != null && day.openLoad > 1 && <Caution name="openRun" />}
    </section>
  );
}

const planName = (name: string): string => texts.value.match.planWords[name] ?? name;

/** What stands about this motor in words: mains that do not fit, one phase, heat, another frequency. */
function Said({ result, path }: { result: BlowerResult; path: string }) {
  const t = texts.value;
  const now = answered.value;
  if (!now) return null;
  const names = namesIn(now.job, t.match);
  const said = (reason: Reason): string => reasonText(reason, names, saying, t.match);
  const reasons = result.reasons.filter((r) => SAID_HERE.has(r.code)).map(said);
  const warnings = now.assessment.warnings
    .filter((w) => WARNED_HERE.has(w.code) && w.path.startsWith(`${path}/`))
    .map((w) => warningWords(w, t));
  const all = [...reasons, ...warnings];
  if (all.length === 0) return null;
  return (
    <ul class="motor-said">
      {all.map((sentence) => (
        <li key={sentence}>
          <DangerMark size={22} filled />
          <span>{sentence}</span>
        </li>
      ))}
    </ul>
  );
}
