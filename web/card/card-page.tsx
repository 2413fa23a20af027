import type { Reason } from '../../src/assessment.ts';
import type { Blower, Job } from '../../src/job/types.ts';
import { DangerMark, VerdictMark } from '../drawings/marks.tsx';
import { chancePhrase } from '../match/chance.ts';
import type { Names } from '../match/names.ts';
import { planTitle } from '../match/plans.ts';
import { figure, sayShort, saying } from '../match/say.ts';
import { settings } from '../state/settings.ts';
import type { Texts } from '../texts/en.ts';
import { digits, sayNumber, unitFor } from '../words/say.ts';
import { MOST_GATES } from './card-model.ts';
import type { CardModel, Rule } from './card-model.ts';
import { FilterScale } from './filter-scale.tsx';
import { GatePictures } from './gate-pictures.tsx';

type Props = {
  job: Job;
  blower: Blower;
  model: CardModel;
  headline: string;
  dangers: Reason[];
  names: Names;
  texts: Texts;
};

/** Pascals in a millimetre of water, for the ruler that is held against a tube. */
const MM_WATER_PA = 9.80665;
/** Longest filter scale that fits its half of the page [mm water]. */
const LONGEST_SCALE = 130;

/** One A4 page, black on white. */
export function CardPage({ job, blower, model, headline, dangers, names, texts }: Props) {
  const t = texts.card;
  return (
    <article class="a4">
      <div class="hole" />
      <h1 class={headline.length > 42 ? (headline.length > 70 ? 'long' : 'middling') : ''}>{headline}</h1>
      <p class="sub">
        {model.rules.some((rule) => rule.why === 'unsure')
          ? t.notYet
          : model.rules.some((rule) => rule.why === 'yes' && rule.plan.open.length > 1)
            ? t.any
            : t.one}
      </p>
      <Rules model={model} names={names} texts={texts} />
      <div class="cols">
        <Air model={model} names={names} texts={texts} />
        {model.filters && <Tube filters={model.filters} texts={texts} />}
        <MotorPart model={model} texts={texts} />
        <section class="caut">
          <h2>
            <DangerMark size={30} /> {t.danger.title}
          </h2>
          <ul>
            {dangers.slice(0, 4).map((reason) => (
              <li key={reason.code}>{t.danger.reasons[reason.code]}</li>
            ))}
            {t.danger.lines.slice(0, dangers.length > 2 ? 2 : 3).map((line) => (
              <li key={line}>{line}</li>
            ))}
            <li>{t.danger.local}</li>
          </ul>
        </section>
      </div>
      <footer>
        <Cell label={t.block.workshop} text={job.name} />
        <Cell
          label={t.block.goodFor}
          text={[blower.label ?? blower.id, model.filters ? t.block.filters(digits(String(model.filters.count))) : '']
            .filter(Boolean)
            .join(texts.match.sentence.comma)}
        />
        <Cell label={t.block.date} text={today()} />
        <Cell label={t.block.checked} text="" />
      </footer>
    </article>
  );
}

const today = (): string =>
  new Intl.DateTimeFormat(settings.value.language === 'ur' ? 'ur-PK-u-nu-latn' : 'en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  }).format(new Date());

function Cell({ label, text }: { label: string; text: string }) {
  return (
    <div>
      <span>{label}</span>
      <b>{text || '\u00a0'}</b>
    </div>
  );
}

function Rules({ model, names, texts }: { model: CardModel; names: Names; texts: Texts }) {
  const t = texts.card.rules;
  const pictures = model.machines.length <= MOST_GATES;
  const note = ({ plan, why }: Rule): string =>
    why === 'unsure' ? t.unsure(chancePhrase(plan.probability, texts.match, digits)) : t[why];
  return (
    <div class={model.rules.length > 4 ? 'rules close' : 'rules'}>
      {pictures && (
        <div class="gate-heads" aria-hidden="true">
          {model.machines.map((id) => (
            <span key={id}>{names.machine(id)}</span>
          ))}
        </div>
      )}
      {model.rules.map((rule) => (
        <div key={rule.plan.name} class="rule">
          <VerdictMark verdict={rule.plan.verdict} size={46} />
          <div class="rule-text">
            <b>{planTitle(rule.plan, names, texts.match)}</b>
            <span>{note(rule)}</span>
          </div>
          {pictures && <GatePictures machines={model.machines} open={rule.plan.open} />}
        </div>
      ))}
      {model.left > 0 && <p class="note">{t.more(digits(String(model.left)))}</p>}
    </div>
  );
}

function Air({ model, names, texts }: { model: CardModel; names: Names; texts: Texts }) {
  const t = texts.card.air;
  const hasTube = model.air.some(({ tube_Pa }) => tube_Pa !== null);
  return (
    <section>
      <h2>
        {t.title} <small>{unitFor('flow')}</small>
      </h2>
      <table>
        <thead>
          <tr>
            <th>{t.alone}</th>
            <th>{t.gets}</th>
            <th>{t.needs}</th>
            {hasTube && (
              <th>
                {t.tube} <small>{unitFor('pressure')}</small>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {model.air.slice(0, 8).map(({ id, flow95_m3_s, needed_m3_s, tube_Pa }) => (
            <tr key={id}>
              <td>{names.machine(id)}</td>
              <td>
                <bdi>
                  {figure('flow', flow95_m3_s[0])}–{figure('flow', flow95_m3_s[1])}
                </bdi>
              </td>
              <td>
                <bdi>{needed_m3_s === null ? '–' : figure('flow', needed_m3_s)}</bdi>
              </td>
              {hasTube && (
                <td>
                  <bdi>{tube_Pa === null ? '–' : figure('pressure', tube_Pa)}</bdi>
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Tube({ filters, texts }: { filters: NonNullable<CardModel['filters']>; texts: Texts }) {
  const t = texts.card.tube;
  const clean_mm = filters.clean_Pa / MM_WATER_PA;
  const loaded_mm = filters.loaded_Pa / MM_WATER_PA;
  const fits = loaded_mm <= LONGEST_SCALE;
  return (
    <section>
      <h2>{t.title}</h2>
      {fits ? (
        <>
          <FilterScale clean_mm={clean_mm} loaded_mm={loaded_mm} digits={digits} texts={t} />
          <p class="note">{t.hang}</p>
          <svg class="ltr" width="312" height="24" fill="none" stroke="#000">
            <path d="M1 6V18M1 12H190M190 6V18" stroke-width="1.6" />
            <text x="200" y="17" font-size="14.5" fill="#000" stroke="none">
              {t.proof}
            </text>
          </svg>
        </>
      ) : (
        <p>{t.plain(sayNumber(clean_mm), sayNumber(loaded_mm))}</p>
      )}
    </section>
  );
}

function MotorPart({ model, texts }: { model: CardModel; texts: Texts }) {
  const t = texts.card.motor;
  const { amps, pulleys, wheel } = model;
  const rows: [string, string, boolean?][] = [];
  if (amps.single_A) rows.push([t.single, saying.range('current', amps.single_A[0], amps.single_A[1])]);
  if (amps.all_A !== null) rows.push([t.all, sayShort('current', amps.all_A)]);
  if (amps.low) rows.push([t.low(sayShort('voltage', amps.low.volts)), t.upTo(sayShort('current', amps.low.amps))]);
  if (amps.plate_A !== null) rows.push([t.stop, t.plate(sayShort('current', amps.plate_A)), true]);
  if (pulleys)
    rows.push([t.pulleys, t.pulleyPair(figure('length', pulleys.motor_m), sayShort('length', pulleys.wheel_m))]);
  if (wheel)
    rows.push([
      t.wheel,
      t.wheelSpeed(
        sayShort('speed', wheel.speed_rpm),
        wheel.limit_rpm === null ? '' : sayShort('speed', wheel.limit_rpm),
      ),
    ]);
  return (
    <section>
      <h2>{t.title}</h2>
      <table class="kv">
        <tbody>
          {rows.map(([name, value, strong]) => (
            <tr key={name} class={strong ? 'strong' : ''}>
              <td>{name}</td>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Dangers of this job that have an order on the card. */
export const cardDangers = (reasons: readonly Reason[], texts: Texts): Reason[] =>
  reasons.filter(
    (reason, i) =>
      texts.card.danger.reasons[reason.code] && reasons.findIndex((other) => other.code === reason.code) === i,
  );
