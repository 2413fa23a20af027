import type { Element } from '../../duct/index.ts';
import { formatNumber } from '../../units/format.ts';
import { at, set, type ChangeMaker } from '../change.ts';

/** What the slide loses at today's flow against what the ducts lose there, from little to much. */
const SLIDE_OVER_DUCTS = [0.08, 0.16, 0.28, 0.42, 0.8, 1.6];
/** A motor cooled by its own air must keep most of it: at this slide a vacuum cleaner's still gets three quarters [-]. Estimated. */
const MOST_SELF_COOLED = 0.8;
/** The slide is set by the clamp meter, not by eye: what it takes is known as well as that [-]. Estimated. */
const SET_BY_METER = 0.1;

/** A slide in the blower's own pipe, closed until the motor draws what it may: less air, less load. */
export const throttle: ChangeMaker = {
  kind: 'throttle',
  propose({ job, judged, motorOverloaded }) {
    if (!motorOverloaded) return [];
    const selfCooled = judged.candidate.blower.wheel.family === 'through-flow-vacuum';
    const pipe = pipeAtBlower(job.ductwork);
    const heaviest = judged.cases.reduce((h, c) => (loadOf(c) > loadOf(h) ? c : h));
    const point = heaviest.points?.heaviest;
    if (pipe === null || !point || point.flow_m3_s <= 0) return [];
    const dynamic_Pa =
      (judged.candidate.air.density_kg_m3 / 2) * (point.flow_m3_s / ((Math.PI / 4) * pipe.diameter_m ** 2)) ** 2;
    return SLIDE_OVER_DUCTS.filter((slide) => !selfCooled || slide <= MOST_SELF_COOLED).map((slide) => ({
      what: `Fit a slide in the blower's own pipe and close it until a clamp meter shows the motor inside its plate with every gate open: about ${formatNumber(100 * shareOf(slide), 0)} % of the pressure goes there. Bolt it so that nobody ${selfCooled ? 'shuts it: this motor is cooled by the air it moves' : 'opens it'}`,
      values: { share: shareOf(slide) },
      patch: [
        set(pipe.end, {
          kind: 'gate',
          diameter_m: pipe.diameter_m,
          k: Number(((slide * point.total_Pa) / dynamic_Pa).toPrecision(3)),
          doubt: SET_BY_METER,
        }),
      ],
    }));
  },
};

/** Share of the whole pressure that goes into the slide once the flow has settled: both losses rise with its square. */
const shareOf = (slide: number): number => slide / (1 + slide);

type Judged = Parameters<ChangeMaker['propose']>[0]['judged']['cases'][number];
const loadOf = (c: Judged): number => c.points?.heaviest?.shaftPower_W ?? -1;

/** Where one run carries all the air: the only way into the blower, else the way out. */
function pipeAtBlower({
  sections,
  discharge,
}: Parameters<ChangeMaker['propose']>[0]['job']['ductwork']): { end: string; diameter_m: number } | null {
  const into = sections.flatMap((s, i) => (s.into === 'blower' ? [i] : []));
  if (into.length === 1) {
    const last = lastPipe(sections[into[0]!]!.elements);
    if (last !== null) return { end: at('ductwork', 'sections', into[0]!, 'elements', '-'), diameter_m: last };
  }
  const out = lastPipe(discharge ?? []);
  return out === null ? null : { end: at('ductwork', 'discharge', '-'), diameter_m: out };
}

function lastPipe(elements: readonly Element[]): number | null {
  const last = elements.findLast((e) => e.kind === 'pipe');
  return last?.kind === 'pipe' ? last.diameter_m : null;
}
