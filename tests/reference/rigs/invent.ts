import { driven } from './true-drive.ts';
import { meetingPoints, type TruePoint } from './meeting-point.ts';
import { canBeDrawn, drawnFan } from './drawn-fan.ts';
import { otherEvidence, type EvidenceMix } from './other-evidence.ts';
import type { Random } from './random.ts';
import { airAt, pressureAtAltitude, type TrueAir } from './true-air.ts';
import { rounded, type trueMotor } from './true-motor.ts';
import { trueTest, type ErrorSizes, type Running, type Tested, type TestWish } from './true-rig.ts';
import type { RigMethod } from './true-methods.ts';
import { trueShop, type ShopWish, type TrueShop } from './true-shop.ts';
import { spinning, trueFan, type TrueFan } from './true-fan.ts';
import { TRUE_FAMILIES, type TrueFamily } from './true-wheels.ts';

/** One invented find: what its owner would type, and what is true. */
export type Invented = {
  job: Record<string, unknown> & { blowers: Record<string, unknown>[] };
  fan: TrueFan;
  family: TrueFamily;
  mix: EvidenceMix;
  method: RigMethod;
  electrical: TestWish['electrical'];
  tested: Tested | null;
  sizes: ErrorSizes;
  shop: TrueShop;
  outletAreaGiven: boolean;
  familyGiven: boolean;
  /** the true operating point with these machines open; null where the blower cannot */
  truePoint(open: readonly string[]): TruePoint | null;
  /** all stable ones, the least flow first */
  truePoints(open: readonly string[]): TruePoint[];
  /** the room's air, and the wheel's free delivery in it [m3/s] */
  air: TrueAir;
  free_m3_s: number;
  voltage_V: number;
  drive: { motorPulleyDiameter_m?: number; wheelPulleyDiameter_m?: number };
  /** wheel and motor at a flow, with the pulleys of today times this ratio and a motor of the same make so many times as large */
  runningWith(ratio: number, motorSize?: number): (flow_m3_s: number, air: TrueAir) => Running;
  /** true efficiency of a motor that is sold by its watts drawn [-], else 1 */
  ownEfficiency: number;
  /** speed of the wheel there [1/min] */
  shopSpeed(point: TruePoint): number;
};

export type Wishes = {
  mix?: EvidenceMix;
  family?: TrueFamily;
  rows?: readonly [least: number, most: number];
  electrical?: TestWish['electrical'];
  /** true sizes of the instruments' errors; left out, somewhere around the program's own idea of them */
  sizes?: ErrorSizes;
  /** how much the machines ask for */
  shop?: Pick<ShopWish, 'asked'>;
  methods?: readonly RigMethod[];
  /** tested with the pulleys it runs with */
  onePulley?: boolean;
  /** shares of free delivery between which to read */
  reach?: readonly [low: number, high: number];
  /** another recipe for the wheel and for its motor */
  fan?: (random: Random) => TrueFan;
  motor?: typeof trueMotor;
};

/** Share of wheels that look like a handbook's drawing; the rest follow Euler's equation. */
export const DRAWN_SHARE = 0.35;

const METHOD_ODDS: readonly RigMethod[] = [
  'orifice-cap',
  'orifice-cap',
  'orifice-cap',
  'orifice-cap',
  'conical-inlet',
  'bell-mouth',
  'orifice-in-pipe',
  'pitot-traverse',
  'pitot-traverse',
  'vane-traverse',
];
export function invent(random: Random, wishes: Wishes = {}): Invented {
  const family = wishes.family ?? random.pick(TRUE_FAMILIES);
  const fan = wishes.fan
    ? wishes.fan(random)
    : canBeDrawn(family) && random.chance(DRAWN_SHARE)
      ? drawnFan(family, random)
      : trueFan(family, random);
  const site = {
    altitude_m: random.chance(0.5) ? 1850 : Math.round(random.uniform(0, 2400)),
    airTemperature_C: Math.round(random.uniform(12, 36)),
    relativeHumidity: 0.5,
  };
  const air = airAt(site.airTemperature_C, pressureAtAltitude(site.altitude_m), site.relativeHumidity);
  const { motor, drive, speedFor } = driven(family, fan, air, random, wishes.motor);

  /** The wheel where its motor takes it: slip and load settle each other. */
  const runningWith =
    (ratio: number, motorSize = 1) =>
    (q: number, a: TrueAir): Running & { current_A: number; inputPower_W: number } => {
      let speed_rpm = speedFor(0, ratio);
      let power = 0;
      for (let i = 0; i < 6; i++) {
        power = spinning(fan, speed_rpm, a.density_kg_m3).shaftPower_W(q) / drive.trueEfficiency;
        speed_rpm = speedFor(power / motorSize, ratio);
      }
      const wheel = spinning(fan, speed_rpm, a.density_kg_m3);
      return {
        speed_rpm,
        static_Pa: wheel.static_Pa(q),
        total_Pa: wheel.total_Pa(q),
        wheelPower_W: wheel.shaftPower_W(q),
        motorPower_W: power,
        current_A: motor.current_A(power),
        inputPower_W: motor.inputPower_W(power),
      };
    };
  const running = runningWith(drive.ratio);

  const size = () => Math.exp(0.35 * random.normal());
  const sizes: ErrorSizes = wishes.sizes ?? { flow: size(), manometer: size(), workshop: size(), electrical: size() };
  const method = random.pick(wishes.methods ?? METHOD_ODDS);
  const electrical = wishes.electrical ?? random.pick(['amps', 'amps', 'watts', 'none'] as const);
  const mix = wishes.mix ?? 'readings';
  const otherPulley = !wishes.onePulley && drive.kind === 'belt' && random.chance(0.2) ? random.uniform(0.82, 1.2) : 1;
  const free =
    fan.phiFree * (Math.PI / 4) * fan.diameter_m ** 2 * ((Math.PI * fan.diameter_m * speedFor(0, drive.ratio)) / 60);
  const readings = mix === 'readings' || mix === 'readings-and-chart' || mix === 'readings-and-rated';
  const tested = readings ? makeTest() : null;

  function makeTest(): Tested | null {
    const side = method === 'bag-fill' || random.chance(0.2) ? 'outlet' : 'inlet';
    const trueDensity = air.density_kg_m3 * (1 + 0.005 * sizes.workshop * random.normal());
    const [least, most] = wishes.rows ?? [3, 8];
    const rows = random.integer(least, most);
    const shutOff = method !== 'bag-fill' && rows > 1 && random.chance(0.35);
    const wish: TestWish = {
      method,
      side,
      tap: random.chance(0.75) ? 'far' : 'near',
      inletDiameter_m: fan.inletDiameter_m,
      freeFlow_m3_s: free * otherPulley,
      shares: sharesToRead(rows - (shutOff ? 1 : 0), random, wishes.reach),
      shutOff,
      electrical: family === 'through-flow-vacuum' && electrical === 'amps' ? 'watts' : electrical,
      speeds: random.chance(0.8) || otherPulley !== 1,
      sizes,
    };
    const made = trueTest(
      wish,
      { ...air, density_kg_m3: trueDensity },
      runningWith(drive.ratio * otherPulley),
      motor.voltage_V,
      random,
    );
    return made.rows.length >= Math.min(least, 3) ? made : null;
  }

  const outletAreaGiven = random.chance(0.7);
  const familyGiven = family === 'axial' || family === 'through-flow-vacuum' || random.chance(0.85);
  const blowsFreely = random.chance(0.4);
  const wayOut_m = blowsFreely
    ? null
    : rounded(Math.sqrt((fan.outletArea_m2 * Math.exp(0.2 * random.normal())) / (Math.PI / 4)), 3);
  const share = random.uniform(0.15, 0.96);
  const wanted = share * free;
  const there = running(wanted, air);
  const shop = trueShop(
    {
      flow_m3_s: wanted,
      pressure_Pa: blowsFreely ? there.static_Pa : there.total_Pa,
      wayOut_m,
      outletArea_m2: fan.outletArea_m2,
      air,
      ...wishes.shop,
    },
    random,
  );

  const truePoints = (open: readonly string[]) =>
    meetingPoints(
      (q) => running(q, air),
      (q) => shop.loss_Pa(open, q, air),
      free,
    );
  const usualRun = running(0.6 * free, air);
  const evidence = [
    ...(tested === null
      ? []
      : [
          {
            kind: 'readings',
            rig: tested.rig,
            rows: tested.rows,
            ...(otherPulley === 1
              ? {}
              : {
                  testedWith: {
                    drive: { ...drive.told, motorPulleyDiameter_m: drive.told.motorPulleyDiameter_m! * otherPulley },
                  },
                }),
          },
        ]),
    ...otherEvidence(
      mix,
      fan,
      { speed_rpm: usualRun.speed_rpm, air, running: (q) => running(q, air), free_m3_s: free, electrical },
      random,
    ),
  ];
  const blower = {
    id: 'b1',
    wheel: {
      family: familyGiven ? family : 'unknown',
      diameter_m: mix === 'wheel' || mix === 'shut-off' || random.chance(0.88) ? rounded(fan.diameter_m, 3) : null,
      inletDiameter_m: random.chance(0.75) ? rounded(fan.inletDiameter_m, 3) : null,
    },
    outletArea_m2: outletAreaGiven ? rounded(fan.outletArea_m2, 5) : null,
    drive: drive.told,
    ...(readings && (tested?.rows[0]?.speed_rpm !== undefined || random.chance(0.5))
      ? {}
      : { runSpeed_rpm: Math.round(usualRun.speed_rpm) }),
    motor: motor.plate,
    evidence,
  };
  const job = {
    format: 'blower-bench-job',
    version: 1,
    name: 'invented find',
    site,
    supply: {
      voltage_V: Math.round(motor.voltage_V),
      frequency_Hz: 50,
      phases: 'phases' in motor.plate ? motor.plate.phases : 1,
    },
    material: 'wood-dust',
    blowers: [blower],
    ductwork: shop.ductwork,
    gatePlans: [
      { name: 'm1 alone', open: ['m1'] },
      ...(shop.machines.length > 1 ? [{ name: 'all together', open: shop.machines }] : []),
    ],
  };
  return {
    job,
    fan,
    family,
    mix,
    method,
    electrical,
    tested,
    sizes,
    shop,
    outletAreaGiven,
    familyGiven,
    air,
    ownEfficiency: 'ratedPowerMeaning' in motor.plate ? 1000 / motor.inputPower_W(1000) : 1,
    free_m3_s: free,
    voltage_V: motor.voltage_V,
    drive: drive.told,
    runningWith: (ratio, motorSize) => runningWith(drive.ratio * ratio, motorSize),
    shopSpeed: (point) => running(point.flow_m3_s, air).speed_rpm,
    truePoint: (open) => truePoints(open)[0] ?? null,
    truePoints,
  };
}

/** Where to read, as shares of free delivery: part of the curve or all of it. */
function sharesToRead(count: number, random: Random, reach?: Wishes['reach']): number[] {
  const [low, high] =
    reach ??
    random.pick([
      [random.uniform(0.05, 0.2), random.uniform(0.75, 0.98)],
      [random.uniform(0.05, 0.2), random.uniform(0.4, 0.6)],
      [random.uniform(0.35, 0.5), random.uniform(0.75, 0.98)],
      [random.uniform(0.2, 0.35), random.uniform(0.6, 0.75)],
    ]);
  if (count <= 1) return count === 1 ? [random.uniform(low, high)] : [];
  return Array.from(
    { length: count },
    (_, i) => low + ((high - low) * (i + random.uniform(-0.2, 0.2))) / (count - 1),
  ).map((x) => Math.min(Math.max(x, 0.03), 0.99));
}
