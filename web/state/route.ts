import { signal } from '@preact/signals';

export const PLACES = ['blowers', 'ducts', 'match', 'card'] as const;
export type Place = (typeof PLACES)[number];

/** Where the page is: a place of the title block, or a leaf below it, read from the address after `#`. */
export type Route =
  | { page: 'blowers' }
  | { page: 'new-blower' }
  | { page: 'blower'; blowerId: string }
  | { page: 'photo'; blowerId: string; photoId: string | null }
  | { page: 'plate'; blowerId: string; photoId: string | null }
  | { page: 'readings'; blowerId: string; index: number }
  | { page: 'sheet'; blowerId: string; index: number; photoId: string | null }
  | { page: 'ducts' }
  | { page: 'match' }
  | { page: 'card' }
  | { page: 'shop' }
  | { page: 'jobs' }
  | { page: 'new-job'; step: number }
  | { page: 'settings' };

export function readRoute(hash: string): Route {
  const [head = '', id, leaf, last, ...below] = hash.replace(/^#\/?/, '').split('/').map(safeDecode);
  if (head === 'blowers') return readBlowerRoute(id, leaf, last, below);
  if (head === 'jobs') return id === 'new' ? { page: 'new-job', step: stepFrom(leaf) } : { page: 'jobs' };
  if (head === 'ducts' || head === 'card' || head === 'shop' || head === 'settings') return { page: head };
  return { page: 'match' };
}

function readBlowerRoute(
  id: string | undefined,
  leaf: string | undefined,
  last: string | undefined,
  below: string[],
): Route {
  if (!id) return { page: 'blowers' };
  if (id === 'new') return { page: 'new-blower' };
  if (leaf === 'photo' || leaf === 'plate') return { page: leaf, blowerId: id, photoId: photoFrom(last) };
  if (leaf === 'readings' && /^\d+$/.test(last ?? '')) {
    const index = Number(last);
    if (below[0] === 'sheet') return { page: 'sheet', blowerId: id, index, photoId: photoFrom(below[1]) };
    return { page: 'readings', blowerId: id, index };
  }
  return { page: 'blower', blowerId: id };
}

const photoFrom = (text: string | undefined): string | null => (text && text !== 'new' ? text : null);

export function hashOf(route: Route): string {
  const id = 'blowerId' in route ? encodeURIComponent(route.blowerId) : '';
  switch (route.page) {
    case 'new-blower':
      return '#/blowers/new';
    case 'blower':
      return `#/blowers/${id}`;
    case 'photo':
    case 'plate':
      return `#/blowers/${id}/${route.page}/${encodeURIComponent(route.photoId ?? 'new')}`;
    case 'readings':
      return `#/blowers/${id}/readings/${route.index}`;
    case 'sheet':
      return `#/blowers/${id}/readings/${route.index}/sheet/${encodeURIComponent(route.photoId ?? 'new')}`;
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
