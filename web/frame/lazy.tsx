import type { ComponentType } from 'preact';
import { signal } from '@preact/signals';
import { texts } from '../texts/index.ts';

const fetchers: (() => void)[] = [];

/** Fetches every place that has not been shown yet, so that the page goes on when the bench falls silent. */
export function fetchPlacesAhead(): void {
  for (const fetchIt of fetchers) fetchIt();
}

/** A place whose code is fetched when it is first shown or in a quiet moment; a failed fetch says so and can be tried again. */
export function lazy<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  const loaded = signal<ComponentType<P> | null>(null);
  const failed = signal(false);
  let asked = false;
  const fetchIt = (): void => {
    asked = true;
    failed.value = false;
    load().then(
      (component) => (loaded.value = component),
      (error: unknown) => {
        console.error(error);
        failed.value = true;
      },
    );
  };
  fetchers.push(() => {
    if (!asked || failed.value) fetchIt();
  });
  return function Lazy(props: P) {
    if (!asked) fetchIt();
    const Loaded = loaded.value;
    if (Loaded) return <Loaded {...props} />;
    if (!failed.value) return <p class="second">{texts.value.common.working}</p>;
    return (
      <button type="button" class="press" onClick={fetchIt}>
        {texts.value.common.tryAgain}
      </button>
    );
  };
}
