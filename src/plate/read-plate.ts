import type { Writing } from '../writing/written.ts';
import { clearRulings } from './layout/clear-rulings.ts';
import { hitsAmong, type Hit } from './layout/hits.ts';
import { placesAmong } from './layout/places.ts';
import { partedAtCommas } from './layout/list-commas.ts';
import { inReadingOrder } from './layout/reading-order.ts';
import { runsOf } from './layout/runs.ts';
import { assigned } from './meaning/assign.ts';
import { readPlaces } from './meaning/alternatives.ts';
import { candidatesOf } from './meaning/candidates.ts';
import { spokenCandidates } from './meaning/spoken.ts';
import { claimsAmong } from './meaning/claims.ts';
import { factsOf, withFacts } from './meaning/facts.ts';
import { opinionsOf, type Opinion } from './meaning/opinions.ts';
import { ratingRows } from './meaning/ratings.ts';
import { settledAmong } from './meaning/settled.ts';
import { FASTEST_INDUCTION_rpm } from './physics/speed.ts';
import { witnessed, type Witnessed } from './physics/witness.ts';
import { fieldsOf } from './put-together.ts';
import type { PlateReading } from './reading.ts';
import { contradictions, largestValues } from './warnings.ts';

/**
 * What the writing on a plate means: its fields in SI, each with the chance that it is right.
 * Words are parted into figures and letters; labels and units are found by their spelling; which value a label means is learnt
 * from the plate itself; then every place and every field are settled together.
 */
export function readPlate(writing: Writing): PlateReading {
  const { told, meaning } = weighed(writing);
  const fields = fieldsOf(told, writing);
  const ratings = ratingRows(told.opinions.map(({ settled }) => settled));
  return {
    fields,
    ...(ratings.length > 0 && { ratings }),
    ratedPowerMeaning: meaning,
    corners_px: writing.corners_px,
    warnings: [...contradictions(told, fields), ...largestValues(fields)],
  };
}

/** What the fields of a plate may be, with their chances, all held against each other. */
export function weighed(writing: Writing): { told: Witnessed; meaning: PlateReading['ratedPowerMeaning'] } {
  const runs = runsOf(inReadingOrder(writing.words.flatMap(partedAtCommas)));
  const hits = hitsAmong(runs);
  const places = placesAmong(runs, hits);
  const reads = readPlaces(places);
  const claims = claimsAmong(hits, places, reads, clearRulings(writing.rulings, runs));
  const facts = factsOf(hits);
  const candidates = [...candidatesOf(reads, claims), ...spokenCandidates(hits, places.length)].map((candidate) =>
    withFacts(candidate, facts),
  );
  const opinions = opinionsOf(settledAmong(assigned(candidates)));
  const meaning = meaningOf(hits, opinions);
  return { told: witnessed(opinions, meaning === 'input'), meaning };
}

/**
 * Watts of vacuum motors and of whatever says so are what the socket gives; of every other motor what the shaft gives.
 * Source: IEC 60335-1 (rated input), IEC 60034-1 (rated output).
 */
function meaningOf(hits: readonly Hit[], opinions: readonly Opinion[]): PlateReading['ratedPowerMeaning'] {
  const says = (what: 'input' | 'shaft') =>
    hits.some(({ clarity, meanings }) => clarity > 0.8 && meanings.some((m) => m.field === what && m.weight > 0.4));
  if (says('input') && !says('shaft')) return 'input';
  const speed = opinions.find(({ field }) => field === 'speed_rpm')?.choices[0]!.value.parts[0];
  return typeof speed === 'number' && speed > FASTEST_INDUCTION_rpm ? 'input' : 'shaft';
}
