import type { Job, Section } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { freeId } from './duct-machines.ts';

/**
 * Cuts a main behind one of its pieces, so that another branch can join there: what flowed into it flows into the front
 * part, which flows into the rest. The rest keeps the id, so everything downstream stays as it is.
 */
export function splitMain(job: Job, id: string, index: number): Edited {
  const { sections } = job.ductwork;
  const at = sections.findIndex((section) => section.id === id);
  const main = sections[at];
  if (!main || main.pickup || index < 0 || index >= main.elements.length - 1) return { job, note: 'section' };
  const front: Section = {
    id: freeId(job, id),
    into: id,
    ...(main.minimumVelocity_m_s != null && { minimumVelocity_m_s: main.minimumVelocity_m_s }),
    elements: main.elements.slice(0, index + 1),
  };
  const rest: Section = { ...main, elements: main.elements.slice(index + 1) };
  const moved = sections
    .toSpliced(at, 1, front, rest)
    .map((section) => (section.into === id && section !== front ? { ...section, into: front.id } : section));
  return {
    job: { ...job, ductwork: { ...job.ductwork, sections: moved }, asTyped: typedSplit(job, at, index) },
    note: 'section',
  };
}

/** What was typed stays with its piece: pieces up to the cut keep their place, all behind it move on by one section. */
function typedSplit(job: Job, at: number, cut: number): Record<string, string> {
  const prefix = '/ductwork/sections/';
  return Object.fromEntries(
    Object.entries(job.asTyped ?? {}).map(([pointer, text]) => {
      if (!pointer.startsWith(prefix)) return [pointer, text];
      const [section = '', field = '', piece = '', ...rest] = pointer.slice(prefix.length).split('/');
      if (Number(section) < at) return [pointer, text];
      if (Number(section) === at && field === 'elements' && piece !== '') {
        if (Number(piece) <= cut) return [pointer, text];
        return [prefix + [at + 1, field, Number(piece) - cut - 1, ...rest].join('/'), text];
      }
      const tail = pointer.slice(prefix.length + section.length);
      return [`${prefix}${Number(section) + 1}${tail}`, text];
    }),
  );
}
