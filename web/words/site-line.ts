import type { Assessment } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import type { Texts } from '../texts/en.ts';
import { formatQuantity } from '../../src/units/index.ts';
import { digits, isolated, say } from './say.ts';

/** Place, air and mains in one line of the title block: what is known of them. */
export function siteLine(job: Job, assessment: Assessment | null, texts: Texts): string {
  const { site, supply } = job;
  const density = assessment ? isolated(say('density', assessment.air.density_kg_m3)) : '';
  const altitude = typeof site.altitude_m === 'number' ? digits(formatQuantity(site.altitude_m, 'm', 0)) : '';
  const mains = [say('voltage', supply.voltage_V), say('voltage', supply.lowestVoltage_V)].filter(
    (volts) => volts !== '',
  );
  return [
    isolated(altitude),
    isolated(say('temperature', site.airTemperature_C)),
    density && texts.shop.airWeighs(density),
    isolated(mains.join('–')),
  ]
    .filter((part) => part !== '')
    .join(texts.common.comma);
}
