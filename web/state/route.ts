import { signal } from '@preact/signals';

export const PLACES = ['blowers', 'ducts', 'match', 'card'] as const;
export type Place = (typeof PLACES)[number];

/** Where the page is: a place of the title block, or a leaf below it, read from the address after `#`. */
export type Route =
  | { page: 'blowers' }
  | { page: 'new-blower' }
  | { page: 'blower'; blowerId: string }
  | { page: 'photo'; blowerId: string; photoId: string | null }
  | { page: 'readings'; blowerId: string; index: number }
  | { page: 'ducts' }
  | { page: 'match' }
  | { page: 'card' }
  | { page: 'shop' }
  | { page: 'jobs' }
  | { page: 'new-job'; step: number }
  | { page: 'settings' };

export function readRoute(hash: string): Route {
  const [head = '', id, leaf, last] = hash.replace(/^#\/?/, '').split('/').map(safeDecode);
  if (head === 'blowers') {
    if (id === 'new') return { page: 'new-blower' };
    if (id && leaf === 'photo') return { page: 'photo', blowerId: id, photoId: last && last !== 'new' ? last : null };
    if (id && leaf === 'readings' && /^\d+$/.test(last ?? ''))
      return { page: 'readings', blowerId: id, index: Number(last) };
    if (id) return { page: 'blower', blowerId: id };
    return { page: 'blowers' };
  }
  if (head === 'jobs') return id === 'new' ? { page: 'new-job', step: stepFrom(leaf) } : { page: 'jobs' };
  if (head === 'ducts' || head === 'card' || head === 'shop' || head === 'settings') return { page: head };
  return { page: 'match' };
}

export function hashOf(route: Route): string {
  const id = 'blowerId' in route ? encodeURIComponent(route.blowerId) : '';
  switch (route.page) {
    case 'new-blower':
      return '#/blowers/new';
    case 'blower':
      return `#/blowers/${id}`;
    case 'photo':
      return `#/blowers/${id}/photo/${encodeURIComponent(route.photoId ?? 'new')}`;
    case 'readings':
      return `#/blowers/${id}/readings/${route.index}`;
    case 'new-job':
      return `#/jobs/new/${route.step + 1}`;
    default:
      return `#/${route.page}`;
  }
}

/** The tab of the title block a page belongs to; pages about the job as a whole belong to none. */
export function placeOf(route: Route): Place | null {
  switch (route.page) {
    case 'ducts':
    case 'match':
    case 'card':
      return route.page;
    case 'shop':
    case 'jobs':
    case 'new-job':
    case 'settings':
      return null;
    default:
      return 'blowers';
  }
}

const stepFrom = (text: string | undefined): number => Math.max(0, (Number.parseInt(text ?? '1', 10) || 1) - 1);

function safeDecode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

export const route = signal<Route>({ page: 'match' });

export const go = (to: Route, how: 'push' | 'replace' = 'push'): void => {
  if (how === 'replace') history.replaceState(null, '', hashOf(to));
  else history.pushState(null, '', hashOf(to));
  route.value = to;
  scrollTo(0, 0);
};

export function followAddress(): void {
  const read = (): void => {
    route.value = readRoute(location.hash);
  };
  read();
  addEventListener('hashchange', read);
  addEventListener('popstate', read);
}
