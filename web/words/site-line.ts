import type { Assessment } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import type { Texts } from '../texts/en.ts';
import { say } from './say.ts';

/** Place, air and mains in one line of the title block: what is known of them. */
export function siteLine(job: Job, assessment: Assessment | null, texts: Texts): string {
  const { site, supply } = job;
  return [
    say('length', site.altitude_m, 'm'),
    say('temperature', site.airTemperature_C),
    assessment ? texts.shop.airWeighs(say('density', assessment.air.density_kg_m3)) : '',
    say('voltage', supply.voltage_V),
  ]
    .filter((part) => part !== '')
    .join(', ');
}
