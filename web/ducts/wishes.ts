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
  needs: (speed: string, need: string) => string;
  size: (diameter_m: number) => string;
  name: (section: string) => string | null;
};

/**
 * What should stand beside the pipes: the speed once per section and width where air moves, with its need where dust settles,
 * and the name and width of mains. Pipes where dust settles are served first.
 */
export function wishesFor(sheet: Sheet, ductwork: Ductwork, air: Map<PlacedPipe, PipeAir>, words: WishWords): Wish[] {
  const machines = new Set(sheet.machines.map((machine) => machine.section));
  const said = new Set<string>();
  const byLength = [...sheet.pipes].sort(
    (a, b) =>
      Number(air.get(b)!.settles) - Number(air.get(a)!.settles) ||
      Number(a.hose) - Number(b.hose) ||
      lengthOf(b.points) - lengthOf(a.points),
  );
  return byLength.flatMap((pipe): Wish[] => {
    const now = air.get(pipe)!;
    const once = `${pipe.place.section} ${pipe.diameter_m.toFixed(4)} ${now.needed_m_s !== null}`;
    if (said.has(once)) return [];
    said.add(once);
    const isMain = !machines.has(pipe.place.section) && pipe.place.section !== DISCHARGE;
    const title =
      isMain && ductwork.sections.some((section) => section.id === pipe.place.section) ? titleOf(pipe, words) : null;
    const moving = now.speed_m_s > STILL_M_S;
    const speed = words.speed(now.speed_m_s);
    const figure = now.settles && now.needed_m_s !== null ? words.needs(speed, words.speed(now.needed_m_s)) : speed;
    if (!moving) return title ? [{ pipe, tone: 'ink', lines: [[title]] }] : [];
    return [
      {
        pipe,
        tone: now.settles ? 'ink' : 'air',
        lines: [...(title ? [[title, figure]] : []), [figure], ...(figure === speed ? [] : [[speed]])],
      },
    ];
  });
}

function titleOf(pipe: PlacedPipe, words: WishWords): string {
  return [words.name(pipe.place.section), words.size(pipe.diameter_m)].filter(Boolean).join(', ');
}
