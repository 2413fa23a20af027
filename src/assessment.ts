import type { Warning } from './issues/result.ts';
import type { Air } from './air/air.ts';
import type { ReasonCode } from './issues/reason-codes.ts';
import type { FilterState } from './duct/elements/element.ts';
import type { PulleyPair, StartEstimate } from './motor/index.ts';

/** What the program concludes from a job. Field names are the contract's; SI throughout. */

export type Verdict = 'yes' | 'no' | 'unsure';

/** `stop` alone can turn a verdict to no, `caution` warns of danger or doubt, `note` explains. */
export type Reason = {
  code: ReasonCode;
  severity: 'stop' | 'caution' | 'note';
  /** what it is about: a section or pick-up id, a blower id, `motor`, `filters` … */
  subject: string;
  /** one English sentence with its numbers */
  text: string;
  /** the numbers behind the sentence, SI, for other languages and units */
  values: Record<string, number | string | null>;
};

/** A 95 % interval, low end first. */
export type Interval = [low: number, high: number];

export type OperatingPoint = {
  flow_m3_s: number;
  totalPressure_Pa: number;
  staticPressure_Pa: number;
  /** of the wheel, without drive loss */
  shaftPower_W: number | null;
  efficiency: number | null;
  speed_rpm: number | null;
  stable: boolean;
  interval95: { flow_m3_s: Interval; totalPressure_Pa: Interval; shaftPower_W: Interval | null };
};

export type FanCurve = {
  flow_m3_s: number[];
  totalPressure_Pa: number[];
  low95_Pa: number[];
  high95_Pa: number[];
  shaftPower_W: number[];
  /** static pressure at the same flows, and the band of shaft power */
  staticPressure_Pa: number[];
  shaftPowerLow95_W: number[];
  shaftPowerHigh95_W: number[];
};

export type SectionResult = {
  id: string;
  flow_m3_s: number;
  velocity_m_s: number | null;
  minimumVelocity_m_s: number | null;
  ok: boolean;
  pressureDrop_Pa: number;
  /** on the way from an open pick-up and carrying dust, so its speed is judged */
  judged: boolean;
};

export type PickupResult = {
  id: string;
  open: boolean;
  flow_m3_s: number;
  requiredFlow_m3_s: number | null;
  ok: boolean;
  probability: number;
  flow95_m3_s: Interval;
};

/** Where the blower's total pressure goes along the way of the worst pick-up, and on to the open air. */
export type BudgetPart = {
  part: 'hood' | 'hose' | 'pipe' | 'bends' | 'cyclone' | 'filters' | 'other' | 'way-out';
  pressure_Pa: number;
};

/** A pipe and how fast the air runs in it; `discharge` is the run behind the blower. */
export type RunSpeed = { id: string; velocity_m_s: number; minimumVelocity_m_s: number };

/** One change after which dust settles nowhere in this case: what to do, and what then happens, all of it solved. */
export type Mend = {
  kind: 'open-gates' | 'smaller-pipe' | 'shut-gates';
  /** pick-ups whose gates to open or shut; empty for pipes */
  gates: string[];
  /** runs to build narrower, with the name of the size sold; empty for gates */
  sizes: { id: string; size: string; from_m: number; to_m: number }[];
  /** the runs that were too slow, as they are then; shut ones are left out */
  runs: RunSpeed[];
  /** machines that had enough air and then have too little */
  short: { id: string; flow_m3_s: number; requiredFlow_m3_s: number }[];
  loadFraction: number | null;
  text: string;
};

/** Where dust settles in a case, and the least that would mend it, each kind once, the least trouble first. */
export type Settling = { runs: RunSpeed[]; mends: Mend[]; text: string };

export type MotorResult = {
  shaftPower_W: number | null;
  loadFraction: number | null;
  margin: number | null;
  current_A: number | null;
  currentAtLowestVoltage_A: number | null;
  worstCase: { gatePlan: string; filterState: FilterState; shaftPower_W: number; loadFraction: number } | null;
  probabilityWithinRating: number | null;
};

export type Case = {
  blowerId: string;
  gatePlan: string;
  required: boolean;
  filterState: FilterState;
  operatingPoint: OperatingPoint | null;
  otherOperatingPoints: OperatingPoint[];
  fanCurve: FanCurve;
  systemCurve: { flow_m3_s: number[]; totalPressure_Pa: number[] };
  sections: SectionResult[];
  discharge: { velocity_m_s: number | null; minimumVelocity_m_s: number | null; ok: boolean };
  pickups: PickupResult[];
  motor: MotorResult;
  budget: BudgetPart[];
  /** only in a finished assessment; null where no dust settles */
  settling?: Settling | null;
  verdict: Verdict;
  probability: number;
  reasons: Reason[];
};

export type StateName = 'loaded-filters' | 'highest-motor-load' | 'blocked-inlet' | 'lowest-voltage' | 'tip-speed';

export type StateResult = {
  state: StateName;
  value: number | null;
  limit: number | null;
  unit: string;
  ok: boolean | null;
  probability: number | null;
  gatePlan: string | null;
};

/** How fast a wheel may be made to turn on the same ducts, and which of motor and wheel gives up first. */
export type SpeedLimit = {
  /** speeds at which motor and wheel reach their limits [1/min]; null where not known */
  byMotor_rpm: number | null;
  byWheel_rpm: number | null;
  /** the lower of the two, and whose it is */
  highest_rpm: number;
  bound: 'motor' | 'wheel';
  /** the wheel turns so fast now [1/min] */
  now_rpm: number;
  /** belt as it runs now [m/s]; null for a direct drive or unknown pulleys */
  beltSpeed_m_s: number | null;
  /** pulleys as sold that come nearest below the highest speed, fewest to buy first; none for a direct drive */
  pairs: PulleyPair[];
};

/** What a meter alone tells of the motor's load, and how rough that is, at the heaviest row of a test. */
export type MeterDoubt = {
  way: 'amps' | 'watts' | 'slip';
  shaftPower_W: number;
  /** 95 % band as a share of the value [-] */
  within: number;
};

/** What the cable to the motor takes: while it runs and while it starts [V, -]; the smallest size sold that keeps 5 % [m2]. */
export type CableEffect = { drop_V: number; dropFraction: number; startVolts: number; enough_m2: number | null };

/** What the motor carries on its worst day, and how far it may go. Loads are shares of rated power × service factor [-]. */
export type WorstDay = {
  /** where the motor carries most: plan, filters, load and its 95 % interval; null without an operating point */
  heaviest: {
    gatePlan: string;
    filterState: FilterState;
    load: number;
    interval95: [low: number, high: number];
  } | null;
  /** the lightest required case, for comparison, and nothing attached at all */
  lightestLoad: number | null;
  openLoad: number | null;
  /** load allowed, and the share of the plate that altitude, heat, unbalance or a one-phase feed leave [-] */
  loadAtMost: number;
  usableShare: number;
  plate_A: number;
  /** at the usual voltage, at the heaviest point */
  current_A: number | null;
  lowest: { voltage_V: number; current_A: number; torqueLeft: number; mayStall: boolean } | null;
  cable: CableEffect | null;
  start: (StartEstimate & { voltageRatio: number }) | null;
  speed: SpeedLimit | null;
  meters: MeterDoubt[];
};

/** Numbers and names of a piece of advice, units in their names: a page builds other languages from them. */
export type ChangeValues = Record<string, string | number>;
export type MeasureNext = {
  measurement: string;
  text: string;
  values: ChangeValues;
  expectedDoubtRemoved: number;
  detail: Record<string, unknown>;
};
export type PatchOperation = { op: 'add' | 'replace' | 'remove'; path: string; value?: unknown };
export type Remedy = {
  kind: string;
  text: string;
  change: PatchOperation[];
  verdictAfter: Verdict;
  probabilityAfter: number;
  /** the changes one by one, and the tightest machine and the motor then and now; what is not known is left out */
  parts: { kind: string; values: ChangeValues }[];
  outcome: ChangeValues;
};

export type BlowerResult = {
  blowerId: string;
  verdict: Verdict;
  probability: number;
  rank: number;
  reasons: Reason[];
  states: StateResult[];
  filterLife_h: number | null;
  drumPressure_Pa: number | null;
  worstDay: WorstDay;
  measureNext: MeasureNext[];
  remedies: Remedy[];
};

export type Assessment = { air: Air; cases: Case[]; blowers: BlowerResult[]; warnings: Warning[] };
