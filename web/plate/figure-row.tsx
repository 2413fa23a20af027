import type { Warning } from '../../src/issues/result.ts';
import { OpenMark, VerdictMark } from '../drawings/marks.tsx';
import { Icon } from '../drawings/icons.tsx';
import { Either } from '../forms/either.tsx';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { endStep } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { isolated, say } from '../words/say.ts';
import { warningWords } from '../words/issue-words.ts';
import { isAskedAnyway } from './asked-anyway.ts';
import { Crop } from './crop.tsx';
import type { Said } from './plate-work.ts';
import type { ShownFigure, Standing } from './shown-figures.ts';

type Props = {
  photo: { photoId: string; width_px: number; height_px: number };
  figure: ShownFigure;
  turn_deg: number;
  warnings: readonly Warning[];
  /** what the job says of it now */
  inJob: number | undefined;
  isLookedAt: boolean;
  onLook: () => void;
  onSay: (said: Said | null, merge: string | null) => void;
};

/** One figure: the piece of the photo, what was read there, and whether somebody must look. */
export function FigureRow({ photo, figure, turn_deg, warnings, inJob, isLookedAt, onLook, onSay }: Props) {
  const t = texts.value.plate;
  const { form, field, text, value, unit, standing, isAsked, printed } = figure;
  const name = t.names[form.name];
  const doubts = warnings.filter(({ code, path }) => !isAskedAnyway(code) && path.split('/').includes(form.name));
  const isOther = inJob !== undefined && value !== null && Math.abs(inJob / value - 1) > 1e-3;
  return (
    <section
      id={`figure-${form.name}`}
      class={`figure${isAsked ? ' asked' : ''}${isLookedAt ? ' looked-at' : ''}`}
      onFocusIn={onLook}
    >
      <h3 class="figure-head">
        <Mark standing={standing} />
        <span>{name}</span>
        {standing !== 'sure' && standing !== 'said' && <small>{t.asks[standing]}</small>}
      </h3>
      {field && field.box_px[2] > 0 && (
        <Crop photo={photo} box={field.box_px} turn_deg={turn_deg} alt={t.cropAlt(name, printed)} />
      )}
      <div class="figure-field">
        {form.name === 'phases' ? (
          <Either
            label={name}
            showLabel={false}
            value={value}
            options={[
              { value: 1, text: texts.value.shop.onePhase },
              { value: 3, text: texts.value.shop.threePhase },
            ]}
            onChoose={(phases) => onSay({ text: String(phases), seen: true }, null)}
          />
        ) : (
          <QuantityBox
            label={name}
            labelUnseen
            quantity={form.quantity}
            unit={unit}
            text={text}
            help={standing === 'several' ? t.severalPrinted(isolated(printed)) : undefined}
            onText={(next) => onSay({ text: next }, form.name)}
            onLeave={endStep}
          />
        )}
        {isAsked && field && (standing === 'doubted' || standing === 'said') && form.name !== 'phases' && (
          <Confirm isSaid={standing === 'said'} onSay={(said) => onSay(said, null)} />
        )}
      </div>
      {doubts.map((warning) => (
        <p key={warning.code} class="figure-doubt">
          {warningWords(warning, texts.value)}
        </p>
      ))}
      {isOther && form.name !== 'phases' && (
        <p class="second">{t.inJob(isolated(say(form.quantity, inJob, form.unit)))}</p>
      )}
    </section>
  );
}

function Mark({ standing }: { standing: Standing }) {
  if (standing === 'missing') return <OpenMark size={20} />;
  return <VerdictMark verdict={standing === 'sure' || standing === 'said' ? 'yes' : 'unsure'} size={20} />;
}

/** One tap says that what was read is right; it stays where it was, so that a thumb going down the list meets no surprise. */
function Confirm({ isSaid, onSay }: { isSaid: boolean; onSay: (said: Said | null) => void }) {
  const t = texts.value.plate;
  return (
    <button
      type="button"
      class={isSaid ? 'press confirm said' : 'press fill confirm'}
      aria-pressed={isSaid}
      onClick={() => onSay(isSaid ? null : { seen: true })}
    >
      {isSaid ? t.confirmed : t.confirm}
      {!isSaid && <Icon name="on" size={18} />}
    </button>
  );
}
