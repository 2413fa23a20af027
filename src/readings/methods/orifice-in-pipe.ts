import { pointer } from '../../issues/result.ts';
import type { Bench } from '../bench.ts';
import { leastReynolds, orificePlateFlow, type OrificePlate } from '../orifice-plate.ts';
import { signal } from '../pressures.ts';
import type { Row } from '../schema.ts';
import type { Method } from './method.ts';

/** The standard's largest and smallest diameter ratio [-]; beyond `LARGEST_RATIO` its equation is of no use at all. */
const STANDARD_RATIOS = [0.1, 0.75] as const;
const LARGEST_RATIO = 0.8;

const plateOf = (bench: Bench, row: Row): OrificePlate => ({
  diameter_m: bench.pipe.diameter_m,
  hole_m: row.orificeDiameter_m!,
  tappings: bench.rig.tappings ?? 'corner',
});

const measure = (bench: Bench, row: Row) =>
  orificePlateFlow(plateOf(bench, row), signal(row.differentialPressure_Pa!), bench.air);

/** A sharp-edged plate between two lengths of pipe, with a tap on each side of it. */
export const orificeInPipe: Method = {
  method: 'orifice-in-pipe',
  label: 'orifice plate in the pipe',
  standard: 'ISO 5167-2:2003',
  source: 'Reader-Harris/Gallagher coefficient and expansibility, ISO 5167-2:2003, 5.3.2',
  help: 'A sharp-edged plate between flanges with long straight pipe before it. Read across the plate, and at the tap between plate and blower.',
  rigFields: [
    'side',
    'pipeDiameter_m',
    'tappings',
    'straightBefore_m',
    'straightAfter_m',
    'lengthToTap_m',
    'lengthTapToBlower_m',
    'surface',
  ],
  rowFields: ['orificeDiameter_m', 'differentialPressure_Pa'],
  rigNeeds: [['pipeDiameter_m']],
  flow: (bench, row) => (row.orificeDiameter_m === 0 ? 0 : bench.flowFactor * measure(bench, row).flow_m3_s),
  impossible(rig, row, path) {
    const { pipeDiameter_m: pipe } = rig;
    const hole = row.orificeDiameter_m;
    const at = path + pointer('orificeDiameter_m');
    if (pipe == null || hole == null || hole <= LARGEST_RATIO * pipe) return [];
    if (hole > pipe) {
      return [
        {
          code: 'contradiction',
          path: at,
          message: `A hole of ${hole} m does not fit into a pipe of ${pipe} m: look at both diameters.`,
        },
      ];
    }
    return [
      {
        code: 'out-of-range',
        path: at,
        message: `A hole of ${hole} m in a pipe of ${pipe} m is too wide to measure by: ${Number((LARGEST_RATIO * pipe).toPrecision(3))} m at most.`,
      },
    ];
  },
  rigDoubtful(rig, path) {
    if (rig.tappings != null) return [];
    const text = 'It is not said where the taps of the plate are: corner taps are taken. The difference is below 2 %.';
    return [{ code: 'tappings-assumed', path: path + pointer('tappings'), text }];
  },
  doubtful(bench, row, path) {
    if (row.orificeDiameter_m === 0) return [];
    const plate = plateOf(bench, row);
    const beta = plate.hole_m / plate.diameter_m;
    const warn = (text: string) => [{ code: 'outside-standard', path: path + pointer('orificeDiameter_m'), text }];
    if (beta < STANDARD_RATIOS[0] || beta > STANDARD_RATIOS[1]) {
      return warn(
        `The hole is ${beta.toFixed(2)} of the pipe; the standard vouches for 0.1 to 0.75. The flow is less sure.`,
      );
    }
    const { reynolds } = measure(bench, row);
    const least = leastReynolds(plate);
    return reynolds > 0 && reynolds < least
      ? warn(
          `The air is too slow for the standard (Reynolds number ${Math.round(reynolds)}, ${Math.round(least)} needed): the flow is less sure.`,
        )
      : [];
  },
};
