import { useEffect } from 'preact/hooks';
import type { BlowerResult } from '../../src/assessment.ts';
import type { Blower } from '../../src/job/types.ts';
import type { Texts } from '../texts/en.ts';
import { BladePicture } from '../drawings/blades.tsx';
import { Icon, type IconName } from '../drawings/icons.tsx';
import { OpenMark, VerdictMark } from '../drawings/marks.tsx';
import { TopBar } from '../frame/top-bar.tsx';
import { flowOf, hardestOf, type AloneFlow, type Hardest } from '../state/alone.ts';
import { answered } from '../state/assessment.ts';
import { aloneFlows, followEachEvidence } from '../state/each-evidence.ts';
import { job } from '../state/job.ts';
import { go, hashOf, type Route } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { sayIn, sayNumber, sayRange, unitFor } from '../words/say.ts';
import { chanceWords, machineName } from '../words/verdict-line.ts';
import { barOn, placeOn, rulerFor, type Ruler } from './bars.ts';
import { blowerTitle, EVIDENCE_ICON, evidenceDetail, evidenceTitle, wheelDetail } from './blower-words.ts';

/** All candidates, each with what every find about it says the hardest machine will get: one ruler, one post for all. */
export function Candidates({ chosen }: { chosen: string | null }) {
  useEffect(() => followEachEvidence(), []);
  const t = texts.value.blowers;
  const blowers = job.value.blowers;
  const assessment = answered.value?.assessment ?? null;
  const hardest = assessment ? hardestOf(assessment) : null;
  const together = (blower: Blower): AloneFlow | null =>
    assessment && hardest ? flowOf(assessment, blower.id, hardest) : null;
  const shown = blowers.flatMap((b) => [
    ...b.evidence.map((_, i) => aloneFlows.value[`${b.id}/${i}`]),
    aloneFlows.value[`${b.id}/wheel`],
    together(b),
  ]);
  const ruler = rulerFor(shown, hardest?.requiredFlow_m3_s ?? null);
  return (
    <>
      <TopBar title={t.count(blowers.length, sayNumber(blowers.length))} />
      {blowers.length === 0 && <p class="empty">{t.none}</p>}
      {ruler && hardest && <RulerHead ruler={ruler} hardest={hardest} />}
      {blowers.map((blower) => (
        <article key={blower.id} class="candidate" aria-current={blower.id === chosen ? 'true' : undefined}>
          <Head blower={blower} />
          <EvidenceRows
            blower={blower}
            ruler={ruler}
            need={hardest?.requiredFlow_m3_s ?? null}
            together={together(blower)}
          />
        </article>
      ))}
      <button type="button" class="box fill next add-blower" onClick={() => go({ page: 'new-blower' })}>
        <span>
          {t.add}
          <small>{t.addHint}</small>
        </span>
        <Icon name="plus" />
      </button>
    </>
  );
}

function RulerHead({ ruler, hardest }: { ruler: Ruler; hardest: Hardest }) {
  const t = texts.value.blowers;
  const need = hardest.requiredFlow_m3_s;
  return (
    <div class="ruler-head">
      <p class="second">{t.rulerSays(machineName(job.value, hardest.pickupId, texts.value), unitFor('flow'))}</p>
      {need !== null && (
        <div class="track ltr">
          <span class="need" style={{ left: `${placeOn(ruler, need)}%` }}>
            <small>{t.needs}</small>
            <b>{sayIn('flow', need)}</b>
          </span>
        </div>
      )}
    </div>
  );
}

function Head({ blower }: { blower: Blower }) {
  const t = texts.value;
  const result = answered.value?.assessment.blowers.find((b) => b.blowerId === blower.id);
  return (
    <a class="candidate-head" href={hashOf({ page: 'blower', blowerId: blower.id })}>
      <BladePicture family={blower.wheel.family} />
      <span class="grow">
        <h2>{blowerTitle(blower, t)}</h2>
        <span class="candidate-verdict">
          {result ? <VerdictMark verdict={result.verdict} size={20} /> : <OpenMark size={20} />}
          {result ? verdictWords(result, t) : t.common.working}
        </span>
      </span>
      {blower.price && (
        <span class="price">
          <b>{sayNumber(blower.price.amount)}</b>
          <small>{blower.price.currency}</small>
        </span>
      )}
    </a>
  );
}

/** A plain no needs no odds beside it. */
const verdictWords = (result: BlowerResult, t: Texts): string =>
  result.verdict === 'no' ? t.verdict.no : `${t.verdict[result.verdict]}, ${chanceWords(result.probability, t)}`;

function EvidenceRows({
  blower,
  ruler,
  need,
  together,
}: {
  blower: Blower;
  ruler: Ruler | null;
  need: number | null;
  together: AloneFlow | null;
}) {
  const t = texts.value;
  const to: Route = { page: 'blower', blowerId: blower.id };
  const given = blower.evidence.flatMap((evidence, index) => (evidence.kind === 'wheel' ? [] : [{ evidence, index }]));
  const has = (kind: 'chart' | 'readings'): boolean => given.some(({ evidence }) => evidence.kind === kind);
  return (
    <div
      class={need === null ? 'finds' : 'finds posted'}
      style={need !== null && ruler ? { '--post': `${placeOn(ruler, need)}%` } : undefined}
    >
      {given.map(({ evidence, index }) => (
        <Find
          key={index}
          icon={EVIDENCE_ICON[evidence.kind]}
          title={evidenceTitle(evidence, t)}
          detail={evidenceDetail(evidence, blower, t)}
          flow={aloneFlows.value[`${blower.id}/${index}`]}
          ruler={ruler}
          to={evidence.kind === 'readings' ? { page: 'readings', blowerId: blower.id, index } : to}
        />
      ))}
      <Find
        icon="rule"
        title={t.blowers.evidence.wheel}
        detail={wheelDetail(blower, t)}
        flow={aloneFlows.value[`${blower.id}/wheel`]}
        ruler={ruler}
        to={to}
      />
      {!has('readings') && (
        <Find icon="tube" title={t.blowers.evidence.readings} detail={t.blowers.testIt} missing ruler={ruler} to={to} />
      )}
      {!has('chart') && (
        <Find
          icon="camera"
          title={t.blowers.evidence.chart}
          detail={t.blowers.addOne}
          missing
          ruler={ruler}
          to={{ page: 'photo', blowerId: blower.id, photoId: null }}
        />
      )}
      <div class="find all">
        <span class="find-words">
          <b>{t.blowers.allTogether}</b>{' '}
          {together && <b class="ltr">{sayRange('flow', together.flow95_m3_s[0], together.flow95_m3_s[1])}</b>}
        </span>
        <Track flow={together} ruler={ruler} solid />
      </div>
    </div>
  );
}

type FindProps = {
  icon: IconName;
  title: string;
  detail: string;
  flow?: AloneFlow | null;
  ruler: Ruler | null;
  to: Route;
  missing?: boolean;
};

function Find({ icon, title, detail, flow, ruler, to, missing }: FindProps) {
  return (
    <a class={missing ? 'find missing' : 'find'} href={hashOf(to)}>
      <span class="find-words">
        <Icon name={icon} size={22} />
        <span>
          <b>{title}</b>
          <small>{detail}</small>
        </span>
      </span>
      <Track flow={flow ?? null} ruler={ruler} />
    </a>
  );
}

function Track({ flow, ruler, solid }: { flow: AloneFlow | null; ruler: Ruler | null; solid?: boolean }) {
  const bar = flow && ruler ? barOn(ruler, flow) : null;
  return (
    <span class="track ltr" aria-hidden="true">
      {bar && <span class={solid ? 'bar solid' : 'bar'} style={{ left: `${bar.left}%`, width: `${bar.width}%` }} />}
      {bar && <span class="notch" style={{ left: `${bar.notch}%` }} />}
    </span>
  );
}
