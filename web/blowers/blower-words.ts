import type { Blower, Evidence } from '../../src/job/types.ts';
import type { Texts } from '../texts/en.ts';
import { capital } from '../match/names.ts';
import { isolated, say, sayNumber } from '../words/say.ts';
import type { IconName } from '../drawings/icons.tsx';

/** How a blower and what is known of it are named: short, from the evidence itself. */

export const blowerTitle = (blower: Blower, texts: Texts): string =>
  capital(blower.label || texts.blowers.families[blower.wheel.family]);

export const EVIDENCE_ICON: Record<Evidence['kind'], IconName> = {
  chart: 'chart',
  readings: 'tube',
  'rated-point': 'point',
  wheel: 'rule',
};

export const evidenceTitle = (evidence: Evidence, texts: Texts): string => texts.blowers.evidence[evidence.kind];

const listed = (parts: string[], texts: Texts): string => parts.filter((part) => part !== '').join(texts.common.comma);

export function evidenceDetail(evidence: Evidence, blower: Blower, texts: Texts): string {
  const t = texts.blowers;
  switch (evidence.kind) {
    case 'chart':
      return listed([isolated(say('speed', evidence.speed_rpm)), t.points(sayNumber(evidence.pressure.length))], texts);
    case 'readings':
      return evidence.rows.length === 0 ? t.noRows : t.rows(sayNumber(evidence.rows.length));
    case 'rated-point': {
      const flow = isolated(say('flow', evidence.flow_m3_s));
      const pressure = isolated(say('pressure', evidence.pressure_Pa));
      if (evidence.pressure_Pa === 0) return t.openFlow(flow);
      return evidence.flow_m3_s === 0 ? t.shutPressure(pressure) : listed([flow, pressure], texts);
    }
    case 'wheel':
      return wheelDetail(blower, texts);
  }
}

export const wheelDetail = (blower: Blower, texts: Texts): string =>
  listed([texts.blowers.families[blower.wheel.family], isolated(say('length', blower.wheel.diameter_m, 'mm'))], texts);
