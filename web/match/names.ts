import type { Job, Section } from '../../src/job/types.ts';
import type { MatchTexts } from '../texts/en-match.ts';

/** Names of machines and pipes as people say them, in the language of the page where a word is known. */
export type Names = { machine: (id: string) => string; section: (id: string) => string };

const ownWord = (name: string, texts: MatchTexts): string => texts.machineWords[name.trim().toLowerCase()] ?? name;

export function namesIn(job: Job, texts: MatchTexts): Names {
  const sections = new Map(job.ductwork.sections.map((section) => [section.id, section]));
  const named = (id: string, first: (section: Section) => string | null | undefined): string => {
    const section = sections.get(id);
    return ownWord((section && (first(section) || section.label || section.pickup?.machine)) || id, texts);
  };
  return {
    machine: (id) => named(id, (section) => section.pickup?.machine),
    section: (id) => named(id, (section) => section.label),
  };
}

/** "saw, band saw and planer"; long lists end in "and 4 more". */
export function listed(names: readonly string[], texts: MatchTexts, most = 3): string {
  const shown =
    names.length > most ? [...names.slice(0, most - 1), texts.more(String(names.length - most + 1))] : names;
  const last = shown.at(-1) ?? '';
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(texts.sentence.comma)} ${texts.and} ${last}`;
}

export const capital = (text: string): string => text.charAt(0).toLocaleUpperCase() + text.slice(1);
