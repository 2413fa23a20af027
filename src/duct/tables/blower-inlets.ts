import { alongRows, type Coefficient, type Rows } from './coefficient.ts';
import { USUAL_RADIUS_RATIO, type ElbowShape } from './elbows.ts';

/**
 * What a badly fed wheel loses, over and above the fitting's own loss, on the velocity pressure of the blower's inlet
 * (system effect, AMCA 201): uneven or spinning air unloads part of the wheel. Three inlet diameters of straight pipe or a
 * straightener cure it. Rows and sources: fixtures/reference/workshop.json, `inlet_elbows`, `inlet_swirl`.
 */

/** An elbow right at the inlet, no vanes, no duct between, by radius ratio. */
export const INLET_ELBOWS: Rows = [
  [0.5, 2.5],
  [0.75, 2],
  [1, 1.2],
  [2, 0.8],
];

/** Loss coefficient of an elbow right at the blower's inlet, beyond the elbow's own. */
export const inletElbow = ({ radiusRatio }: ElbowShape): Coefficient => ({
  k: alongRows(INLET_ELBOWS, radiusRatio ?? USUAL_RADIUS_RATIO),
  doubt: 0.45,
  source: 'ASHRAE 1988, system effect factors of elbows at the inlet, no vanes, no duct between',
});

/** Loss coefficient of air that comes spinning from a drum or a cyclone. */
export const INLET_SWIRL: Coefficient = {
  k: 1,
  doubt: 0.7,
  source:
    'no published figure (AMCA 201: the ways of spinning air cannot be tabulated). One velocity pressure, with a doubt that covers a quarter to four',
};
