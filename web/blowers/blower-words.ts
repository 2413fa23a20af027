import type { Blower, Evidence } from '../../src/job/types.ts';
import type { Texts } from '../texts/en.ts';
import { say, sayNumber } from '../words/say.ts';
import type { IconName } from '../drawings/icons.tsx';

/** How a blower and what is known of it are named: short, from the evidence itself. */

export const blowerTitle = (blower: Blower, texts: Texts): string =>
  blower.label || texts.blowers.families[blower.wheel.family];

export const EVIDENCE_ICON: Record<Evidence['kind'], IconName> = {
  chart: 'chart',
  readings: 'tube',
  'rated-point': 'point',
  wheel: 'rule',
};

export const evidenceTitle = (evidence: Evidence, texts: Texts): string => texts.blowers.evidence[evidence.kind];

export function evidenceDetail(evidence: Evidence, blower: Blower, texts: Texts): string {
  const t = texts.blowers;
  switch (evidence.kind) {
    case 'chart':
      return [say('speed', evidence.speed_rpm), t.points(sayNumber(evidence.pressure.length))]
        .filter(Boolean)
        .join(', ');
    case 'readings':
      return evidence.rows.length === 0 ? t.noRows : t.rows(sayNumber(evidence.rows.length));
    case 'rated-point':
      return [say('flow', evidence.flow_m3_s), say('pressure', evidence.pressure_Pa)].join(', ');
    case 'wheel':
      return wheelDetail(blower, texts);
  }
}

export const wheelDetail = (blower: Blower, texts: Texts): string =>
  [texts.blowers.families[blower.wheel.family], say('length', blower.wheel.diameter_m, 'mm')]
    .filter(Boolean)
    .join(', ');

/** "2.2 kW, belt" */
export const driveDetail = (blower: Blower, texts: Texts): string =>
  [say('power', blower.motor.ratedPower_W), texts.blowers.drives[blower.drive.kind]].filter(Boolean).join(', ');
