import { pointer, type Warning } from '../issues/result.ts';
import type { Writing } from '../writing/written.ts';
import { hitsAmong, type Hit } from './layout/hits.ts';
import { placesAmong } from './layout/places.ts';
import { aimsOf, type Aim } from './layout/pointing.ts';
import { claimsOf, type Claim } from './layout/relations.ts';
import { runsOf } from './layout/runs.ts';
import { assigned } from './meaning/assign.ts';
import {
  candidatesOf,
  formRatio,
  readPlaces,
  spokenCandidates,
  type Factor,
  type ReadPlace,
} from './meaning/candidates.ts';
import { factsOf, withFacts } from './meaning/facts.ts';
import { settledAmong } from './meaning/settled.ts';
import { fieldsOf } from './put-together.ts';
import type { FieldName, PlateReading } from './reading.ts';

/**
 * What the writing on a plate means: its fields in SI, each with the chance that it is right.
 * Words are parted into figures and letters; labels and units are found by their spelling; which value a label means is learnt
 * from the plate itself; then every place and every field are settled together.
 */
export function readPlate(writing: Writing): PlateReading {
  const words = writing.words.toSorted((a, b) => a.line - b.line || a.x0 - b.x0);
  const runs = runsOf(words);
  const hits = hitsAmong(runs);
  const places = placesAmong(runs, hits);
  const reads = readPlaces(places);
  const pointing = hits.filter(({ meanings }) => meanings.every(({ value }) => value === undefined));
  const aims = aimsOf(pointing, places, writing.rulings);
  const units = claimsOf(
    aims.filter(({ hit }) => hit.isUnit),
    fitOf(reads, []),
  );
  const labels = claimsOf(
    aims.filter(({ hit }) => !hit.isUnit),
    fitOf(reads, units),
  );
  const claims = [...units, ...labels];
  const facts = factsOf(hits);
  const candidates = [...candidatesOf(reads, claims), ...spokenCandidates(hits, places.length)].map((candidate) =>
    withFacts(candidate, facts),
  );
  const settled = settledAmong(assigned(candidates));
  const fields = fieldsOf(settled, writing);
  return {
    fields,
    ratedPowerMeaning: meaningOf(hits, fields),
    corners_px: writing.corners_px,
    warnings: largestValues(fields),
  };
}

/** How well what stands at the end of an aim fits what the label or unit says, with the units already known. */
export function fitOf(reads: readonly ReadPlace[], units: readonly Claim[]): (aim: Aim) => number {
  const byPlace = new Map(reads.map((read) => [read.place, read]));
  return ({ hit, place }) => {
    const beside = units.filter((claim) => claim.place === place && claim.hit !== hit);
    const ratios = hit.meanings.map(({ field, weight, factor, offset }) => {
      if (field === 'other') return weight;
      const name: FieldName = field === 'input' || field === 'shaft' ? 'ratedPower_W' : field;
      const own: Factor | null = factor === undefined ? null : { factor, offset: offset ?? 0, share: 1 };
      return weight * formRatio(byPlace.get(place)!, name, own, beside);
    });
    return Math.max(...ratios);
  };
}

/**
 * Watts of vacuum motors and of whatever says so are what the socket gives; of every other motor what the shaft gives.
 * Source: IEC 60335-1 (rated input), IEC 60034-1 (rated output).
 */
function meaningOf(hits: readonly Hit[], fields: PlateReading['fields']): PlateReading['ratedPowerMeaning'] {
  const says = (what: 'input' | 'shaft') =>
    hits.some(({ clarity, meanings }) => clarity > 0.8 && meanings.some((m) => m.field === what && m.weight > 0.4));
  if (says('input') && !says('shaft')) return 'input';
  const speed = [fields.speed_rpm?.value ?? 0].flat()[0];
  return typeof speed === 'number' && speed > FASTEST_INDUCTION_rpm ? 'input' : 'shaft';
}
/** Two poles at 60 Hz turn at 3600; what is faster has brushes. */
const FASTEST_INDUCTION_rpm = 3700;

/** A plate's largest flow and largest pressure are two points of the blower, never one. */
function largestValues(fields: PlateReading['fields']): Warning[] {
  if (!fields.flow_m3_s || !fields.pressure_Pa) return [];
  const text =
    'The plate names an air flow and a pressure. Often these are the largest flow, with nothing attached, and the largest pressure, with the inlet closed: then they are two points and not one. Which are they here?';
  return [{ code: 'largest-values', text, path: pointer('fields', 'pressure_Pa') }];
}
