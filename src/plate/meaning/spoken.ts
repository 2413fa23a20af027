import { around } from '../layout/boxes.ts';
import type { Hit } from '../layout/hits.ts';
import type { Place } from '../layout/places.ts';
import type { FieldName } from '../reading.ts';
import type { Candidate } from './candidates.ts';

/** Values that stand there in words. */
export function spokenCandidates(hits: readonly Hit[], firstId: number): Candidate[] {
  return hits.flatMap((hit, i) => [
    ...(isWave(hit) ? [spoken('phases', 1, hit, WAVE_ODDS, firstId + i)] : []),
    ...hit.meanings.flatMap(({ field, value }): Candidate[] => {
      if (value === undefined || field === 'other' || field === 'input' || field === 'shaft') return [];
      const odds = Math.log(hit.clarity / (1.001 - hit.clarity)) + SPOKEN_ODDS;
      return [spoken(field, value, hit, odds, firstId + i)];
    }),
  ]);
}

function spoken(field: FieldName, value: number, hit: Hit, odds: number, id: number): Candidate {
  const alternatives = [{ numbers: [value], code: null, printed: hit.text, factor: null, box: hit, share: 1 }];
  return { place: placeOf(hit, id), field, score: odds, labelled: odds, united: 0, formed: 0, alternatives };
}

/** The wave behind volts says one phase where nothing says three. */
const isWave = ({ isUnit, text, meanings }: Hit) =>
  isUnit && text.includes('~') && meanings.some(({ field }) => field === 'voltage_V');
const WAVE_ODDS = 1.5;

/** Words that say a value are seldom there for another reason. */
const SPOKEN_ODDS = 3;

const placeOf = (hit: Hit, id: number): Place => ({
  ...around([hit]),
  id,
  figure: null,
  whole: hit.runs.flatMap(({ marks }) => marks),
  text: hit.text,
  longer: [],
  capitalHeight: hit.capitalHeight,
  isDoubtful: false,
  strange: 0,
  seen: 1,
});
