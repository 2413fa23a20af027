import type { Case } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import { figure, saying } from '../match/say.ts';
import type { Names } from '../match/names.ts';
import type { DuctTexts } from '../texts/en-ducts.ts';
import { say, sayIn } from '../words/say.ts';
import { airInPipes } from './airflow.ts';
import type { DrawingTexts } from './drawing.tsx';
import { elementLine } from './element-line.ts';
import { placeLabels } from './layout/labels.ts';
import type { Label } from './layout/labels.ts';
import { DISCHARGE } from './layout.ts';
import type { Metrics, Place, Sheet } from './layout.ts';
import { wishesFor } from './wishes.ts';

/** All lettering of the drawing in the page's language and the user's units. */
export function drawingWords(
  sheet: Sheet,
  job: Job,
  shown: Case | null,
  metrics: Metrics,
  names: Names,
  texts: DuctTexts,
): { labels: Label[]; texts: DrawingTexts } {
  const air = airInPipes(sheet.pipes, job.ductwork, shown);
  const wishes = wishesFor(sheet, job.ductwork, air, {
    speed: (m_s) => saying.quantity('velocity', Math.round(m_s)),
    need: (m_s) => texts.drawing.needs(figure('velocity', m_s)),
    size: (diameter_m) => say('length', diameter_m),
    name: (section) => names.section(section),
  });
  const t = texts.drawing;
  const elements = (place: Place) =>
    place.section === DISCHARGE
      ? (job.ductwork.discharge ?? [])
      : (job.ductwork.sections.find((section) => section.id === place.section)?.elements ?? []);
  const machines = new Set(sheet.machines.map((machine) => machine.section));
  const where = (place: Place) =>
    place.section === DISCHARGE
      ? texts.piece.wayOut
      : machines.has(place.section)
        ? names.machine(place.section)
        : names.section(place.section);
  return {
    labels: placeLabels(sheet, wishes, metrics),
    texts: {
      label: t.label,
      drum: t.drum,
      cone: t.cone,
      filters: (count) => t.filters(String(count), count !== 1),
      blower: t.blower,
      out: job.ductwork.exhaust === 'returned' ? t.back : t.out,
      open: t.open,
      shut: t.shut,
      machine: (section) => names.machine(section),
      piece: (place) => {
        const element = place.index === null ? undefined : elements(place)[place.index];
        if (!element) return where(place);
        const { name, figure: size } = elementLine(element, texts, (quantity, si, unit) =>
          unit ? `${sayIn(quantity, si, unit)} ${unit}` : say(quantity, si),
        );
        return `${where(place)}: ${name} ${size}`;
      },
      gate: (section, open) => t.gate(names.machine(section), open),
    },
  };
}
