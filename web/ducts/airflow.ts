import type { Case } from '../../src/assessment.ts';
import type { Ductwork, Section } from '../../src/job/types.ts';
import { DISCHARGE } from './layout.ts';
import type { PlacedPipe } from './layout.ts';

/** What moves in one drawn pipe: speed of the air, and whether dust comes to rest there. */
export type PipeAir = { speed_m_s: number; needed_m_s: number | null; settles: boolean };

const CATCHERS: readonly string[] = ['cyclone', 'filters'];

/** Index of the first element of a section that keeps the dust; the section's length where there is none. */
const firstCatcher = (section: Section): number => {
  const at = section.elements.findIndex((element) => CATCHERS.includes(element.kind));
  return at < 0 ? section.elements.length : at;
};

/**
 * The assessment's flow in each section, spread over its drawn pipes: speed is flow over the pipe's own area.
 * A pipe settles where the assessment judged its section too slow and this pipe is one of the slow ones before the dust is caught.
 */
export function airInPipes(
  pipes: readonly PlacedPipe[],
  ductwork: Ductwork,
  shown: Case | null,
): Map<PlacedPipe, PipeAir> {
  const results = new Map(shown?.sections.map((result) => [result.id, result]));
  const sections = new Map(ductwork.sections.map((section) => [section.id, section]));
  const air = new Map<PlacedPipe, PipeAir>();
  for (const pipe of pipes) {
    const area = (Math.PI / 4) * pipe.diameter_m ** 2;
    const result = results.get(pipe.place.section);
    const flow = pipe.place.section === DISCHARGE ? (shown?.operatingPoint?.flow_m3_s ?? 0) : (result?.flow_m3_s ?? 0);
    const speed_m_s = Math.abs(flow) / area;
    const section = sections.get(pipe.place.section);
    const dusty = section !== undefined && (pipe.place.index ?? 0) < firstCatcher(section);
    const needed_m_s = result?.judged && dusty ? result.minimumVelocity_m_s : null;
    const settles = Boolean(result && !result.ok && result.judged && needed_m_s !== null && speed_m_s < needed_m_s);
    air.set(pipe, { speed_m_s, needed_m_s, settles });
  }
  return air;
}

/** Below this the air counts as still: a shut gate's leak moves no dash. [m/s] */
export const STILL_M_S = 1;

/** Flow that runs through a section now, or through the way out. [m3/s] */
export function flowInRun(shown: Case | null, run: string): number {
  if (run === DISCHARGE) return shown?.operatingPoint?.flow_m3_s ?? 0;
  return Math.abs(shown?.sections.find((section) => section.id === run)?.flow_m3_s ?? 0);
}

/** Speed of a flow in a round pipe. [m/s] */
export const speedAt = (flow_m3_s: number, inside_m: number): number => flow_m3_s / ((Math.PI / 4) * inside_m ** 2);
