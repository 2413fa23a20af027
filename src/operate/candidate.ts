import type { Air } from '../air/air.ts';
import type { Warning } from '../issues/result.ts';
import type { Blower } from '../job/types.ts';
import type { MotorAtSite } from '../motor/index.ts';
import type { CurveBand, FanDraws } from '../fan/draws.ts';
import type { FanEstimate } from '../fan/estimate.ts';

/** A blower ready to be judged: its curve out of all evidence, possible true curves, and its motor on this mains. */
export type Candidate = {
  blower: Blower;
  /** JSON Pointer of the blower */
  path: string;
  air: Air;
  speed_rpm: number | null;
  outletArea_m2: number | null;
  outletAreaGuessed: boolean;
  motor: MotorAtSite;
  /** the next four are null together: nothing gives a curve */
  estimate: FanEstimate | null;
  draws: FanDraws | null;
  band: CurveBand | null;
  /** best total pressure on the net of the draws [Pa] */
  bestOnNet_Pa: Float64Array | null;
  warnings: Warning[];
};
