import type { Bench, Running } from './true-rig.ts';
import { circle_m2 } from './true-air.ts';
import { clamp, rounded } from './true-motor.ts';

/** Ways of measuring, written forwards: from the true flow to what the instruments show. Formulas as the job document gives them. */
export type RigMethod =
  'orifice-cap' | 'conical-inlet' | 'bell-mouth' | 'orifice-in-pipe' | 'pitot-traverse' | 'vane-traverse' | 'bag-fill';
type Row = Record<string, number | number[]>;
type Made = { flow_m3_s: number; row: Row };
type Method = {
  rig(bench: Bench, tap: 'near' | 'far'): Record<string, unknown>;
  /** null where this flow cannot be had with this rig */
  take(bench: Bench, wanted_m3_s: number, running: (q: number) => Running, tap: 'near' | 'far'): Made | null;
};

const velocityPressure = (bench: Bench, q: number) => (bench.air.density_kg_m3 / 2) * (q / bench.pipe.area_m2) ** 2;

/** What the tap shows when the blower makes its pressure at this flow: inlet |p_s| = fan static + p_v − friction, outlet p_s = fan total − p_v − friction. */
function tapPressure(bench: Bench, q: number, state: Running): number {
  const [p_v, friction] = [velocityPressure(bench, q), bench.friction_Pa(bench.tapToBlower_m, q)];
  return bench.side === 'inlet' ? state.static_Pa + p_v - friction : state.total_Pa - p_v - friction;
}
const sign = (bench: Bench) => (bench.side === 'inlet' && !bench.random.chance(0.2) ? -1 : 1);

const common = (bench: Bench, method: RigMethod) => ({
  method,
  pipeDiameter_m: bench.told.pipeDiameter_m,
  lengthToTap_m: bench.endToTap_m,
  lengthTapToBlower_m: bench.tapToBlower_m,
  surface: 'galvanised-duct',
});

/** A method whose signal depends on the flow alone, with any throttle upstream or downstream setting the flow. */
const throttled = (
  method: RigMethod,
  extra: (bench: Bench) => Record<string, unknown>,
  signal: (bench: Bench, formulaFlow: number, state: Running) => Row | null,
): Method => ({
  rig: (bench) => ({ ...common(bench, method), ...extra(bench) }),
  take(bench, wanted, running) {
    const state = running(wanted);
    const tap = tapPressure(bench, wanted, state);
    const shown = signal(bench, wanted / bench.flowFactor, state);
    // air that comes in of itself is sucked at least as hard as its speed takes: no throttle makes it less
    const least = bench.side === 'inlet' ? velocityPressure(bench, wanted) : 0;
    if (tap < Math.max(10, least) || shown === null) return null;
    return { flow_m3_s: wanted, row: { staticPressure_Pa: sign(bench) * bench.manometer(tap), ...shown } };
  },
});

const throat = (bench: Bench) => ({ throatDiameter_m: rounded(0.9 * bench.told.pipeDiameter_m, 3) });
const throatSignal = (bench: Bench, q: number, coefficient: number) =>
  bench.manometer((bench.air.density_kg_m3 / 2) * (q / coefficient / circle_m2(throat(bench).throatDiameter_m)) ** 2);

/** Equal-area points of a turbulent profile: v ~ y^(1/7), mean one. */
function profile(points: number, bench: Bench): number[] {
  const raw = Array.from({ length: points }, (_, i) => {
    const radius = Math.sqrt((2 * (i % (points / 2)) + 1) / points);
    return (1 - radius * 0.98) ** (1 / 7) * (1 + 0.02 * bench.random.normal());
  });
  const mean = raw.reduce((a, b) => a + b) / points;
  return raw.map((v) => v / mean);
}

/** Reader-Harris/Gallagher with corner taps, pipes over 71 mm. Source: ISO 5167-2:2003, 5.3.2.1. */
function plateCoefficient(beta: number, reynolds: number): number {
  const a = ((19_000 * beta) / reynolds) ** 0.8;
  return (
    0.5961 +
    0.0261 * beta ** 2 -
    0.216 * beta ** 8 +
    0.000521 * ((1e6 * beta) / reynolds) ** 0.7 +
    (0.0188 + 0.0063 * a) * beta ** 3.5 * (1e6 / reynolds) ** 0.3
  );
}

export const METHODS: Record<RigMethod, Method> = {
  'orifice-cap': {
    rig: (bench, tap) => ({ ...common(bench, 'orifice-cap'), ...(bench.side === 'inlet' ? { tap } : {}) }),
    take: takeOrificeCap,
  },
  'conical-inlet': throttled('conical-inlet', throat, (bench, q) => {
    const reynolds =
      (4 * q * bench.air.density_kg_m3) / Math.PI / throat(bench).throatDiameter_m / bench.air.viscosity_Pa_s;
    const alpha = reynolds >= 300_000 ? 0.96 : 1 - 0.5 * Math.max(reynolds, 1) ** -0.2;
    return { throatPressure_Pa: throatSignal(bench, q, alpha) };
  }),
  'bell-mouth': throttled('bell-mouth', throat, (bench, q) => ({
    throatPressure_Pa: throatSignal(bench, q, 0.99),
  })),
  'orifice-in-pipe': throttled(
    'orifice-in-pipe',
    () => ({ tappings: 'corner' }),
    (bench, q, state) => {
      const beta = bench.random.uniform(0.5, 0.72);
      const hole = rounded(beta * bench.told.pipeDiameter_m, 3);
      const trueHole = hole + 0.0003 * bench.sizes.workshop * bench.random.normal();
      const b = trueHole / bench.pipe.diameter_m;
      const { density_kg_m3: density, viscosity_Pa_s: viscosity } = bench.air;
      const reynolds = Math.max((4 * q * density) / Math.PI / bench.pipe.diameter_m / viscosity, 3000);
      const jet = q / (plateCoefficient(b, reynolds) * circle_m2(trueHole));
      const differential = (density / 2) * jet * jet * (1 - b ** 4);
      // the plate itself eats half of this: more than the blower has to give, and the flow would not come about
      if (differential > state.static_Pa + 100) return null;
      return { orificeDiameter_m: hole, differentialPressure_Pa: Math.max(0, bench.manometer(differential)) };
    },
  ),
  'pitot-traverse': throttled(
    'pitot-traverse',
    () => ({}),
    (bench, q) => ({
      velocityPressures_Pa: profile(10, bench).map((v) =>
        Math.max(0, bench.manometer((bench.air.density_kg_m3 / 2) * ((q / bench.pipe.area_m2) * v) ** 2)),
      ),
    }),
  ),
  'vane-traverse': throttled(
    'vane-traverse',
    () => ({}),
    (bench, q) => ({
      velocities_m_s: profile(8, bench).map((v) =>
        rounded(
          Math.max(0, (q / bench.pipe.area_m2) * v * (1 + 0.02 * bench.sizes.workshop * bench.random.normal())),
          1,
        ),
      ),
    }),
  ),
  'bag-fill': {
    rig: (bench) => ({ ...common(bench, 'bag-fill'), bagVolume_m3: 2 }),
    take(bench, wanted, running) {
      if (wanted <= 0) return null;
      const tap = tapPressure(bench, wanted, running(wanted));
      const seconds = 2 / (wanted / bench.flowFactor) + 0.2 * bench.sizes.workshop * bench.random.normal();
      if (tap < 10 || seconds < 2) return null;
      return {
        flow_m3_s: wanted,
        row: { staticPressure_Pa: sign(bench) * bench.manometer(tap), fillTime_s: rounded(seconds, 1) },
      };
    },
  },
};

const CONTRACTION = 0.6;
/** Contraction of a jet out of a pipe, rising with the area ratio after Weisbach's table, 0.60 for a small hole. */
const outletContraction = (areaRatio: number) => CONTRACTION + 0.4 * areaRatio ** 3;

/** Suction or pressure at the tap with a hole of this size [Pa]. */
function capSignal(bench: Bench, hole_m: number, q: number, tap: 'near' | 'far', open: boolean): number {
  const formulaFlow = q / bench.flowFactor;
  const half = bench.air.density_kg_m3 / 2;
  const { area_m2 } = bench.pipe;
  if (bench.side === 'outlet') {
    const jet = outletContraction((hole_m / bench.pipe.diameter_m) ** 2) * circle_m2(hole_m);
    return half * formulaFlow ** 2 * (jet ** -2 - area_m2 ** -2);
  }
  const toTap = bench.friction_Pa(bench.endToTap_m, q);
  if (open) return half * (formulaFlow / area_m2) ** 2 * (1 + bench.openEndLoss) + toTap;
  const jet = formulaFlow / (CONTRACTION * circle_m2(hole_m));
  if (tap === 'near') return half * jet ** 2;
  return half * ((jet - q / area_m2) ** 2 + (q / area_m2) ** 2) + toTap;
}

/** Fan pressure that this hole asks for at a flow [Pa], static on the inlet side, total on the outlet side. */
function capDemand(bench: Bench, hole_m: number, q: number, tap: 'near' | 'far', open: boolean): number {
  const signal = capSignal(bench, hole_m, q, tap, open);
  const p_v = velocityPressure(bench, q);
  const friction = bench.friction_Pa(bench.tapToBlower_m, q);
  if (bench.side === 'outlet') return signal + p_v + friction;
  if (tap === 'near' && !open) {
    const jet = q / bench.flowFactor / (CONTRACTION * circle_m2(hole_m));
    return (bench.air.density_kg_m3 / 2) * (jet - q / bench.pipe.area_m2) ** 2 + friction;
  }
  return signal - p_v + friction;
}

function takeOrificeCap(
  bench: Bench,
  wanted: number,
  running: (q: number) => Running,
  tap: 'near' | 'far',
): Made | null {
  const made = (q: number, hole: number, told: number, open: boolean): Made => {
    const state = running(q);
    const shown =
      q === 0 ? (bench.side === 'inlet' ? state.static_Pa : state.total_Pa) : capSignal(bench, hole, q, tap, open);
    return {
      flow_m3_s: q,
      row: { staticPressure_Pa: sign(bench) * Math.abs(bench.manometer(shown)), orificeDiameter_m: told },
    };
  };
  if (wanted === 0) return made(0, 0, 0, false);
  const most = 0.88 * bench.told.pipeDiameter_m;
  const pressure = (q: number) => (bench.side === 'inlet' ? running(q).static_Pa : running(q).total_Pa);
  // the hole that would let this flow through: smaller holes ask for more pressure
  let [small, large] = [0.02 * bench.told.pipeDiameter_m, most];
  for (let i = 0; i < 40; i++) {
    const middle = (small + large) / 2;
    if (capDemand(bench, middle, wanted, tap, false) > pressure(wanted)) small = middle;
    else large = middle;
  }
  const open = bench.side === 'inlet' && large > 0.999 * most && bench.random.chance(0.5);
  const told = open ? bench.told.pipeDiameter_m : rounded(large, 3);
  const hole = open
    ? bench.pipe.diameter_m
    : clamp(told + 0.0003 * bench.sizes.workshop * bench.random.normal(), 0.002, 1);
  // where this hole makes the blower run: the stable crossing next to what was wanted
  const excess = (q: number) => pressure(q) - capDemand(bench, hole, q, tap, open);
  let best: number | null = null;
  const top = 1.3 * wanted;
  for (let i = 0; i < 90; i++) {
    let [a, b] = [(top * i) / 90, (top * (i + 1)) / 90];
    if (!(excess(a) > 0 && excess(b) <= 0)) continue;
    for (let k = 0; k < 40; k++) {
      const middle = (a + b) / 2;
      if (excess(middle) > 0) a = middle;
      else b = middle;
    }
    if (best === null || Math.abs(a - wanted) < Math.abs(best - wanted)) best = a;
  }
  return best === null || best <= 0 ? null : made(best, hole, told, open);
}
