import { signal } from '@preact/signals';

/** A desk's screen: ducts and match stand side by side from here on. */
const query = matchMedia('(min-width: 1100px)');
export const wide = signal(query.matches);
query.addEventListener('change', (event) => (wide.value = event.matches));
