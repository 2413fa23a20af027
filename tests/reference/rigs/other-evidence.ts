import type { Random } from './random.ts';
import type { TrueAir } from './true-air.ts';
import { rounded } from './true-motor.ts';
import type { Running } from './true-rig.ts';
import { spinning, type TrueFan } from './true-fan.ts';

/** What else an owner may have besides readings. */
export type EvidenceMix =
  'readings' | 'readings-and-chart' | 'readings-and-rated' | 'chart' | 'rated' | 'shut-off' | 'wheel';

/** 95 % limits of the tolerance grades, relative. Source: ISO 13348:2007, table 2 (from memory). */
const GRADES = {
  AN1: [0.01, 0.01, 0.02],
  AN2: [0.025, 0.025, 0.03],
  AN3: [0.05, 0.05, 0.08],
  AN4: [0.1, 0.1, 0.16],
} as const;
/** A used blower is not believed closer than this in flow (field tolerance of certified fans). */
const USED = 0.075;

type Now = {
  speed_rpm: number;
  air: TrueAir;
  running(flow_m3_s: number): Running;
  free_m3_s: number;
  electrical: 'amps' | 'watts' | 'none';
};

export function otherEvidence(mix: EvidenceMix, fan: TrueFan, now: Now, random: Random): Record<string, unknown>[] {
  switch (mix) {
    case 'readings':
      return [];
    case 'readings-and-chart':
    case 'chart':
      return [chart(fan, now, random)];
    case 'readings-and-rated':
    case 'rated':
      return ratedPoints(fan, now, random);
    case 'shut-off':
      return [shutOffReading(now, random)];
    case 'wheel':
      return [{ kind: 'wheel' }];
  }
}

/** The curve of the type: this very wheel is off it by an error of flow and one of pressure within its grade. */
function chart(fan: TrueFan, now: Now, random: Random) {
  const grade = random.pick(['AN1', 'AN2', 'AN3', 'AN4'] as const);
  const [flowLimit, pressureLimit, powerLimit] = GRADES[grade];
  const flow = Math.exp((Math.max(flowLimit, USED) / 1.96) * random.normal());
  const pressure = Math.exp((pressureLimit / 1.96) * random.normal());
  const power = Math.exp((powerLimit / 1.96) * random.normal());
  const speed_rpm = Math.round(now.speed_rpm * random.uniform(0.9, 1.1));
  const wheel = spinning(fan, speed_rpm, 1.2);
  const flows = Array.from({ length: 25 }, (_, i) => (i / 24) * wheel.freeFlow_m3_s);
  return {
    kind: 'chart',
    speed_rpm,
    airDensity_kg_m3: 1.2,
    pressureKind: 'static',
    accuracyGrade: grade,
    pressure: flows.map((q) => [q * flow, Math.max(wheel.static_Pa(q), 0) * pressure]),
    shaftPower: flows.map((q) => [q * flow, wheel.shaftPower_W(q) * power]),
  };
}

/** One or two points off a plate, each with 8 % of its own. */
function ratedPoints(fan: TrueFan, now: Now, random: Random) {
  const wheel = spinning(fan, now.speed_rpm, 1.2);
  const shared = [0.08 * Math.SQRT1_2 * random.normal(), 0.08 * Math.SQRT1_2 * random.normal()] as const;
  const off = (i: 0 | 1) => 1 + shared[i] + 0.08 * Math.SQRT1_2 * random.normal();
  return (random.chance(0.5) ? [0, 1] : [0.55]).map((share) => ({
    kind: 'rated-point',
    flow_m3_s: rounded(share * wheel.freeFlow_m3_s * off(0), 4),
    pressure_Pa: share === 1 ? 0 : Math.round(wheel.static_Pa(share * wheel.freeFlow_m3_s) * off(1)),
    pressureKind: 'static',
    speed_rpm: Math.round(now.speed_rpm),
    airDensity_kg_m3: 1.2,
  }));
}

/** At the stall: the board over the inlet, one reading, one current. */
function shutOffReading(now: Now, random: Random) {
  const state = now.running(0) as Running & { current_A: number };
  return {
    kind: 'readings',
    rig: { method: 'orifice-cap', pipeDiameter_m: 0.1, tap: 'far' },
    rows: [
      {
        staticPressure_Pa: -Math.round(state.static_Pa * (1 + 0.008 * random.normal()) + 4 * random.normal()),
        orificeDiameter_m: 0,
        speed_rpm: Math.round(state.speed_rpm * (1 + 0.0025 * random.normal())),
        current_A: rounded(state.current_A * (1 + 0.015 * random.normal()), 2),
      },
    ],
  };
}
