import type { Ductwork } from '../../src/job/types.ts';
import { STILL_M_S } from './airflow.ts';
import type { PipeAir } from './airflow.ts';
import type { Wish } from './layout/labels.ts';
import { lengthOf } from './layout/polyline.ts';
import { DISCHARGE } from './layout.ts';
import type { PlacedPipe, Sheet } from './layout.ts';

/** How the lettering of the drawing writes its figures. */
export type WishWords = {
  speed: (m_s: number) => string;
  /** the speed that is needed, said after the one that is */
  need: (m_s: number) => string;
  size: (diameter_m: number) => string;
  name: (section: string) => string | null;
};

/**
 * What should stand beside the pipes: the speed once per section and width where air moves, with its need where dust settles,
 * and once the name and width of each main. Pipes where dust settles are served first, then rigid ones, then the longest.
 */
export function wishesFor(sheet: Sheet, ductwork: Ductwork, air: Map<PlacedPipe, PipeAir>, words: WishWords): Wish[] {
  const machines = new Set(sheet.machines.map((machine) => machine.section));
  const mains = new Set(ductwork.sections.map((section) => section.id).filter((id) => !machines.has(id)));
  const said = new Set<string>();
  const urgency = (pipe: PlacedPipe) => (air.get(pipe)!.settles ? 2 : 0) + (pipe.hose ? 0 : 1);
  const inOrder = [...sheet.pipes].sort((a, b) => urgency(b) - urgency(a) || lengthOf(b.points) - lengthOf(a.points));
  const first = (key: string): boolean => !said.has(key) && Boolean(said.add(key));
  return inOrder.flatMap((pipe): Wish[] => {
    const { section } = pipe.place;
    const now = air.get(pipe)!;
    if (!first(`${section} ${pipe.diameter_m.toFixed(4)} ${now.needed_m_s !== null}`)) return [];
    const title =
      mains.has(section) && section !== DISCHARGE && !pipe.hose && first(section) ? titleOf(pipe, words) : null;
    const still = now.speed_m_s <= STILL_M_S;
    if (still) return title ? [{ pipe, tone: 'ink', lines: [[title]] }] : [];
    const speed = words.speed(now.speed_m_s);
    const titled = (figure: string): string[][] => (title ? [[title, figure], [figure]] : [[figure]]);
    if (!now.settles || now.needed_m_s === null) return [{ pipe, tone: 'air', lines: titled(speed) }];
    const need = words.need(now.needed_m_s);
    return [{ pipe, tone: 'ink', lines: [...titled(`${speed}, ${need}`), [`${speed},`, need], [speed]] }];
  });
}

const titleOf = (pipe: PlacedPipe, words: WishWords): string =>
  [words.name(pipe.place.section), words.size(pipe.diameter_m)].filter(Boolean).join(', ');
