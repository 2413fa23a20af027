import { job } from '../state/job.ts';
import type { Route } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { lazy } from '../frame/lazy.tsx';
import { TopBar } from '../frame/top-bar.tsx';
import { Candidates } from './candidates.tsx';
import { BlowerPage } from './blower-page.tsx';
import { NewBlowerPage } from './new-blower-page.tsx';
import './candidates.css';
import './blower.css';

const PhotoPage = lazy(async () => (await import('../photo/photo-page.tsx')).PhotoPage);
const PlatePage = lazy(async () => (await import('../plate/plate-page.tsx')).PlatePage);
const SheetPage = lazy(async () => (await import('../sheet/sheet-page.tsx')).SheetPage);
const ReadingsPage = lazy(async () => (await import('../readings/readings-page.tsx')).ReadingsPage);

/** Candidates and what is known of each. On a desk the list stays beside the one that is open. */
export function BlowersPlace({ here, wide }: { here: Route; wide: boolean }) {
  const blowerId = 'blowerId' in here ? here.blowerId : null;
  const leaf = <Leaf here={here} />;
  if (!wide) return here.page === 'blowers' ? <Candidates chosen={null} /> : leaf;
  const first = job.value.blowers[0];
  return (
    <>
      <section aria-label={texts.value.places.blowers}>
        <Candidates chosen={blowerId ?? (here.page === 'blowers' ? (first?.id ?? null) : null)} />
      </section>
      <section>
        {here.page === 'blowers' ? first ? <BlowerPage key={first.id} blowerId={first.id} /> : <NewBlowerPage /> : leaf}
      </section>
    </>
  );
}

function Leaf({ here }: { here: Route }) {
  if (here.page === 'new-blower') return <NewBlowerPage />;
  if (!('blowerId' in here)) return null;
  const known = job.value.blowers.some((blower) => blower.id === here.blowerId);
  if (!known) return <Gone />;
  switch (here.page) {
    case 'photo':
      return <PhotoPage key={`${here.blowerId} ${here.photoId}`} blowerId={here.blowerId} photoId={here.photoId} />;
    case 'plate':
      return <PlatePage key={`${here.blowerId} ${here.photoId}`} blowerId={here.blowerId} photoId={here.photoId} />;
    case 'sheet':
      return (
        <SheetPage
          key={`${here.blowerId} ${here.index} ${here.photoId}`}
          blowerId={here.blowerId}
          index={here.index}
          photoId={here.photoId}
        />
      );
    case 'readings':
      return <ReadingsPage key={`${here.blowerId} ${here.index}`} blowerId={here.blowerId} index={here.index} />;
    default:
      return <BlowerPage key={here.blowerId} blowerId={here.blowerId} />;
  }
}

/** An address of a blower that is no more, e.g. after undo. */
function Gone() {
  const t = texts.value.blowers;
  return (
    <>
      <TopBar title={t.gone} back={{ page: 'blowers' }} />
      <p class="empty">{t.goneHint}</p>
    </>
  );
}
