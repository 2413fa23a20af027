import { computed } from '@preact/signals';
import { settings, type Language } from '../state/settings.ts';
import { en, type Texts } from './en.ts';
import { ur } from './ur.ts';

/** Every text of the page, by language. A new language is one more file and one more line here. */
export const LANGUAGES: Record<Language, { name: string; direction: 'ltr' | 'rtl'; texts: Texts }> = {
  en: { name: 'English', direction: 'ltr', texts: en },
  ur: { name: 'اردو', direction: 'rtl', texts: ur },
};

/** The texts of the language that is chosen now: read as `texts.value.blowers.title`. */
export const texts = computed<Texts>(() => LANGUAGES[settings.value.language].texts);
