import { useSignal } from '@preact/signals';
import type { Blower } from '../../src/job/types.ts';
import { Icon } from '../drawings/icons.tsx';
import { addEvidence } from '../edits/add-evidence.ts';
import { removeEvidence } from '../edits/remove-evidence.ts';
import { job, perform } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { EVIDENCE_ICON, evidenceDetail, evidenceTitle, wheelDetail } from './blower-words.ts';
import { photoThumb } from '../photo/photo-address.ts';
import { EvidenceInfluence } from './evidence-influence.tsx';
import { RatedPointFields } from './rated-point-fields.tsx';
import { ChartFields } from './chart-fields.tsx';

/** What is known of the blower, piece by piece, and three ways to know more. */
export function EvidencePart({ blower, path }: { blower: Blower; path: string }) {
  const t = texts.value.blowers;
  const open = useSignal<number | null>(null);
  const addReadings = (): void => {
    const edited = addEvidence(job.value, {
      blowerId: blower.id,
      evidence: { kind: 'readings', rig: { method: 'orifice-cap' }, rows: [] },
    });
    perform(edited);
    go({ page: 'readings', blowerId: blower.id, index: edited.index });
  };
  const addPoint = (): void => {
    const edited = addEvidence(job.value, {
      blowerId: blower.id,
      evidence: { kind: 'rated-point', flow_m3_s: 0, pressure_Pa: 0 },
    });
    perform(edited);
    open.value = edited.index;
  };
  return (
    <section class="part">
      <h2>{t.known}</h2>
      <ul class="rows">
        {blower.evidence.map((evidence, index) => (
          <li key={index}>
            {evidence.kind === 'wheel' ? null : (
              <EvidenceRow
                blower={blower}
                index={index}
                isOpen={open.value === index}
                onToggle={() => (open.value = open.value === index ? null : index)}
              />
            )}
            {open.value === index && evidence.kind === 'rated-point' && (
              <RatedPointFields path={`${path}/evidence/${index}`} evidence={evidence} />
            )}
            {open.value === index && evidence.kind === 'chart' && (
              <ChartFields path={`${path}/evidence/${index}`} evidence={evidence} blowerId={blower.id} />
            )}
          </li>
        ))}
        <li class="row">
          <span class="row-picture">
            <Icon name="rule" />
          </span>
          <span class="grow">
            <b>{t.evidence.wheel}</b>
            <span class="second block">{wheelDetail(blower, texts.value)}</span>
          </span>
        </li>
      </ul>
      <div class="ways">
        <button type="button" class="way" onClick={() => go({ page: 'photo', blowerId: blower.id, photoId: null })}>
          <Icon name="camera" />
          <b>{t.ways.chart}</b>
          <small>{t.ways.chartHint}</small>
        </button>
        <button type="button" class="way" onClick={addReadings}>
          <Icon name="tube" />
          <b>{t.ways.readings}</b>
          <small>{t.ways.readingsHint}</small>
        </button>
        <button type="button" class="way" onClick={addPoint}>
          <Icon name="point" />
          <b>{t.ways.point}</b>
          <small>{t.ways.pointHint}</small>
        </button>
      </div>
    </section>
  );
}

function EvidenceRow({
  blower,
  index,
  isOpen,
  onToggle,
}: {
  blower: Blower;
  index: number;
  isOpen: boolean;
  onToggle: () => void;
}) {
  const t = texts.value;
  const evidence = blower.evidence[index];
  if (!evidence || evidence.kind === 'wheel') return null;
  const photoId = 'photoId' in evidence ? evidence.photoId : null;
  const openIt = (): void => {
    if (evidence.kind === 'readings') go({ page: 'readings', blowerId: blower.id, index });
    else onToggle();
  };
  return (
    <div class="row">
      <button
        type="button"
        class="row-open grow"
        aria-expanded={evidence.kind === 'readings' ? undefined : isOpen}
        onClick={openIt}
      >
        <span class="row-picture">
          {photoId ? (
            <img src={photoThumb(photoId)} alt="" width="44" height="36" loading="lazy" />
          ) : (
            <Icon name={EVIDENCE_ICON[evidence.kind]} />
          )}
        </span>
        <span class="grow">
          <b>{evidenceTitle(evidence, t)}</b>
          <span class="second block">{evidenceDetail(evidence, blower, t)}</span>
          <EvidenceInfluence blower={blower} index={index} />
        </span>
      </button>
      <button
        type="button"
        class="icon"
        aria-label={t.blowers.removeEvidence(evidenceTitle(evidence, t))}
        onClick={() => perform(removeEvidence(job.value, { blowerId: blower.id, index }))}
      >
        <Icon name="bin" />
      </button>
    </div>
  );
}
