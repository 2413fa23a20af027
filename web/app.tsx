import { lazy } from './frame/lazy.tsx';
import { wide } from './frame/wide.ts';
import { TitleBlock } from './frame/title-block.tsx';
import { SaveStrip } from './frame/save-strip.tsx';
import { Welcome } from './frame/welcome.tsx';
import { phase } from './state/bench.ts';
import { placeOf, route, type Route } from './state/route.ts';
import { texts } from './texts/index.ts';
import { BlowersPlace } from './blowers/blowers-place.tsx';

const DuctsPlace = lazy(async () => (await import('./ducts/ducts-place.tsx')).DuctsPlace);
const MatchPlace = lazy(async () => (await import('./match/match-place.tsx')).MatchPlace);
const CardPlace = lazy(async () => (await import('./card/card-place.tsx')).CardPlace);
const ShopPage = lazy(async () => (await import('./shop/shop-page.tsx')).ShopPage);
const SettingsPage = lazy(async () => (await import('./shop/settings-page.tsx')).SettingsPage);
const JobsPage = lazy(async () => (await import('./jobs/jobs-page.tsx')).JobsPage);
const NewJobPage = lazy(async () => (await import('./jobs/new-job-page.tsx')).NewJobPage);

/** The whole page: one place at a time on a phone; on a desk ducts and match side by side. */
export function App() {
  const here = route.value;
  if (phase.value === 'loading') return <p class="sheet-of-work second">{texts.value.common.loading}</p>;
  if (phase.value === 'welcome' && here.page !== 'jobs' && here.page !== 'settings') return <Welcome />;
  const place = placeOf(here);
  const pair = wide.value && (place === 'ducts' || place === 'match');
  const halves = pair ? 'side-by-side' : wide.value && place === 'blowers' ? 'side-by-side blowers-desk' : '';
  return (
    <>
      <main class={`sheet-of-work ${halves}`}>
        <SaveStrip />
        {pair ? (
          <>
            <section aria-label={texts.value.places.ducts}>
              <DuctsPlace wide />
            </section>
            <section aria-label={texts.value.places.match}>
              <MatchPlace wide />
            </section>
          </>
        ) : (
          <Page here={here} />
        )}
      </main>
      {phase.value === 'open' && <TitleBlock wide={wide.value} />}
    </>
  );
}

function Page({ here }: { here: Route }) {
  switch (here.page) {
    case 'ducts':
      return <DuctsPlace wide={wide.value} />;
    case 'match':
      return <MatchPlace wide={wide.value} />;
    case 'card':
      return <CardPlace />;
    case 'shop':
      return <ShopPage />;
    case 'settings':
      return <SettingsPage />;
    case 'jobs':
      return <JobsPage />;
    case 'new-job':
      return <NewJobPage step={here.page === 'new-job' ? here.step : 0} />;
    default:
      return <BlowersPlace here={here} wide={wide.value} />;
  }
}
