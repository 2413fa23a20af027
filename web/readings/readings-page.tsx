import { signal, useSignal } from '@preact/signals';
import type { ReadingsEvidence } from '../../src/job/types.ts';
import { Caution } from '../cautions/caution.tsx';
import { TopBar } from '../frame/top-bar.tsx';
import { KeptPhotos } from '../photo/kept-photos.tsx';
import { FanPlot } from '../plot/fan-plot.tsx';
import { curveOfBlower, pointsOfBlower } from '../state/blower-curve.ts';
import { job } from '../state/job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { BeforeTest } from './before-test.tsx';
import { Flashes } from './flashes.tsx';
import { HoleSheets } from './hole-sheet.tsx';
import { EvidenceRemarks } from './remarks.tsx';
import { ReadingsTable } from './table.tsx';
import { RigPart } from './rig-part.tsx';
import './readings.css';

/** The holes being printed, outside of the page: paper is narrower than a desk, and the page is laid out anew while it prints. */
const printing = signal<{ path: string; holes_m: number[] } | null>(null);

/** A test with home-made means: the rig as a drawing, the readings as a table, and the curve that grows from them. */
export function ReadingsPage({ blowerId, index }: { blowerId: string; index: number }) {
  const t = texts.value;
  const allColumns = useSignal(false);
  const at = job.value.blowers.findIndex((blower) => blower.id === blowerId);
  const evidence = job.value.blowers[at]?.evidence[index];
  if (evidence?.kind !== 'readings') {
    return (
      <>
        <TopBar title={t.readings.title} back={{ page: 'blower', blowerId }} />
        <p class="empty">{t.readings.gone}</p>
      </>
    );
  }
  const path = `/blowers/${at}/evidence/${index}`;
  const holes = printing.value?.path === path ? printing.value.holes_m : null;
  if (holes !== null) {
    return (
      <div class="readings">
        <TopBar title={t.readings.sheet.heading} />
        <HoleSheets rig={evidence.rig} holes_m={holes} onClose={() => (printing.value = null)} />
      </div>
    );
  }
  const points = pointsOfBlower(blowerId).filter((p) => p.evidence === index);
  return (
    <div class="readings">
      <TopBar
        title={t.readings.title}
        small={t.readings.methods[evidence.rig.method]}
        back={{ page: 'blower', blowerId }}
      />
      <RigPart path={path} evidence={evidence} />
      <BeforeTest
        blowerId={blowerId}
        path={path}
        evidence={evidence}
        onPrint={(holes_m) => {
          printing.value = { path, holes_m };
          scrollTo(0, 0);
        }}
      />
      <div class="live">
        <FanPlot curve={curveOfBlower(blowerId)} points={points} height={190} label={t.blowers.curve} />
      </div>
      <KeptPhotos
        photoIds={[...(evidence.photoId ? [evidence.photoId] : []), ...(evidence.morePhotoIds ?? [])]}
        nameOf={t.sheet.see}
        take={t.sheet.photograph}
        onOpen={(photoId) => go({ page: 'sheet', blowerId, index, photoId })}
      />
      <ReadingsTable path={path} evidence={evidence} all={allColumns.value} />
      <button type="button" class="tap" onClick={() => (allColumns.value = !allColumns.value)}>
        {allColumns.value ? t.readings.fewerColumns : t.readings.moreColumns}
      </button>
      <Flashes path={path} evidence={evidence} />
      <EvidenceRemarks path={path} />
      <Caution name="openRun" />
      <Caution name="mains" />
      <HowTo evidence={evidence} />
    </div>
  );
}

function HowTo({ evidence }: { evidence: ReadingsEvidence }) {
  const t = texts.value.readings;
  const steps = evidence.rig.method === 'orifice-cap' ? t.howToCap : t.howTo;
  return (
    <section class="part">
      <h2>{t.how}</h2>
      <ol class="welcome-steps plain">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </section>
  );
}
