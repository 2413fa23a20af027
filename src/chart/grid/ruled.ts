import type { SideName } from '../frame/find-sides.ts';
import type { ScaleGrid } from './scale-grid.ts';
import type { StraightenedChart } from '../straightened-chart.ts';

/** So many printed lines at round values are no chance. */
const LEAST_LINES = 4;
/** Nearly every round value has its line, and nearly every line its round value. */
const NEARLY_ALL = 0.75;

/** What a smooth bend of the page leaves of true grid lines, share of the axis, root mean square. */
const LARGEST_LEFT = 0.001;

/** Whether a printed grid stands at round values all along an axis: it tells where the scale's ends lie. */
export const isRuled = ({ lattice, isRound }: ScaleGrid): boolean =>
  lattice !== null &&
  isRound &&
  lattice.anchored.length >= LEAST_LINES &&
  lattice.filled >= NEARLY_ALL &&
  lattice.explained >= NEARLY_ALL &&
  lattice.residual <= LARGEST_LEFT;

/** The grid whose lines run beside the left and right side, or beside bottom and top: it tells where these would be. */
export const gridAlong = ({ flowGrid, valueGrids }: StraightenedChart, side: SideName): ScaleGrid =>
  side === 'left' || side === 'right' ? flowGrid : [...valueGrids.values()][0]!;
