import { computed, effect, signal } from '@preact/signals';

export type Language = 'en' | 'ur';
export type Theme = 'system' | 'light' | 'dark';
export type Digits = 'western' | 'eastern';

export type Settings = {
  language: Language;
  theme: Theme;
  digits: Digits;
  /** the unit a quantity is shown in, both keys of the unit table in src/units; a missing one takes the default below */
  units: Record<string, string>;
};

/** Units as a workshop says them; people change them one by one. */
export const DEFAULT_UNITS: Record<string, string> = {
  flow: 'm³/h',
  pressure: 'mm water',
  length: 'mm',
  area: 'cm²',
  power: 'kW',
  velocity: 'm/s',
  speed: 'rpm',
  temperature: '°C',
};

const KEY = 'blower-bench-settings';
const FIRST: Settings = { language: 'en', theme: 'system', digits: 'western', units: {} };

function read(): Settings {
  try {
    return { ...FIRST, ...(JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Settings>) };
  } catch {
    return FIRST;
  }
}

export const settings = signal<Settings>(read());
export const changeSettings = (change: Partial<Settings>): void => {
  settings.value = { ...settings.value, ...change };
};

export const unitOf = (quantity: string): string | undefined =>
  settings.value.units[quantity] ?? DEFAULT_UNITS[quantity];

const systemDark = signal(false);
export const dark = computed(() =>
  settings.value.theme === 'system' ? systemDark.value : settings.value.theme === 'dark',
);

/** Keeps the settings across visits and the document's language, direction and colours in step with them. */
export function applySettings(): void {
  const query = matchMedia('(prefers-color-scheme: dark)');
  systemDark.value = query.matches;
  query.addEventListener('change', (event) => (systemDark.value = event.matches));
  effect(() => {
    try {
      localStorage.setItem(KEY, JSON.stringify(settings.value));
    } catch {
      // a browser that keeps nothing still works; the choice lasts until the page is closed
    }
    const root = document.documentElement;
    root.lang = settings.value.language;
    root.dir = settings.value.language === 'ur' ? 'rtl' : 'ltr';
  });
  effect(() => {
    document.documentElement.dataset['theme'] = dark.value ? 'dark' : 'light';
    document.querySelector('meta[name=theme-color]')?.setAttribute('content', dark.value ? '#14191E' : '#F6F0E0');
  });
}
