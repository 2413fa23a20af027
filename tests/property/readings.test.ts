import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METHOD_NAMES, Readings, reduceReadings, type Row } from '../../src/readings/index.ts';

const AIR = { density_kg_m3: 0.97, viscosity_Pa_s: 1.83e-5, pressure_Pa: 81_500 };
const maybe = <T>(some: fc.Arbitrary<T>) => fc.option(some, { nil: undefined });
const size = fc.double({ min: 1e-4, max: 50, noNaN: true });
/** The door refuses what is too near zero to be meant. */
const meant = (value: number) => (Math.abs(value) < 1e-9 ? 0 : value);
const pressure = fc.oneof(fc.constant(0), fc.double({ min: -200_000, max: 200_000, noNaN: true })).map(meant);
const positive = fc.double({ min: 1e-6, max: 1e6, noNaN: true });

const anyRow: fc.Arbitrary<Row> = fc.record({
  staticPressure_Pa: pressure,
  speed_rpm: maybe(fc.double({ min: 1, max: 200_000, noNaN: true })),
  current_A: maybe(positive),
  orificeDiameter_m: maybe(fc.oneof(fc.constant(0), size)),
  throatPressure_Pa: maybe(pressure),
  differentialPressure_Pa: maybe(pressure),
  velocityPressures_Pa: maybe(fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }).map(meant), { maxLength: 8 })),
  velocities_m_s: maybe(fc.array(fc.double({ min: 0, max: 500, noNaN: true }).map(meant), { maxLength: 8 })),
  fillTime_s: maybe(positive),
});
const anyReadings: fc.Arbitrary<Readings> = fc.record({
  kind: fc.constant('readings' as const),
  rig: fc.record({
    method: fc.constantFrom(...METHOD_NAMES),
    side: maybe(fc.constantFrom('inlet' as const, 'outlet' as const)),
    pipeDiameter_m: maybe(size),
    width_m: maybe(size),
    height_m: maybe(size),
    tap: maybe(fc.constantFrom('far' as const, 'near' as const)),
    throatDiameter_m: maybe(size),
    tappings: maybe(fc.constantFrom('corner' as const, 'flange' as const, 'D-and-half-D' as const)),
    bagVolume_m3: maybe(size),
    lengthToTap_m: maybe(fc.double({ min: 0, max: 100, noNaN: true })),
    surface: maybe(fc.constantFrom('pvc-pipe' as const, 'flexible-hose' as const)),
  }),
  air: maybe(
    fc.record({
      temperature_C: maybe(fc.double({ min: -60, max: 200, noNaN: true })),
      barometricPressure_Pa: maybe(fc.double({ min: 20_000, max: 120_000, noNaN: true })),
      relativeHumidity: maybe(fc.double({ min: 0, max: 1, noNaN: true })),
    }),
  ),
  rows: fc.array(anyRow, { maxLength: 6 }),
});

/** Points with the pairs that an error of theirs changes, as plain numbers. */
const numbersOf = (readings: Readings): number[] => {
  const reduced = reduceReadings(readings, AIR, '/e');
  if (!reduced.ok) return [];
  return reduced.value.points.flatMap((p) => [
    p.airDensity_kg_m3,
    ...[p, ...p.shared, ...p.own].flatMap((o) => [o.flow_m3_s, o.pressure_Pa]),
  ]);
};

describe('readings', () => {
  it('any valid evidence gives finite numbers or a sentence, and no flow below zero', () => {
    fc.assert(
      fc.property(anyReadings, (readings) => {
        expect(Readings.safeParse(readings).success).toBe(true);
        const reduced = reduceReadings(readings, AIR, '/e');
        if (!reduced.ok) {
          expect(reduced.issues.every((i) => i.path.startsWith('/e/rows/') && i.message.length > 20)).toBe(true);
          return;
        }
        expect(numbersOf(readings).every(Number.isFinite)).toBe(true);
        expect(reduced.value.points.every((p) => p.flow_m3_s >= 0)).toBe(true);
        const left = new Set(
          reduced.warnings.filter((w) => w.code.startsWith('row-')).map((w) => w.path.split('/')[3]),
        );
        const rigMissing = reduced.warnings.some((w) => w.code === 'rig-incomplete');
        if (!rigMissing) expect(reduced.value.points.length).toBe(readings.rows.length - left.size);
      }),
      { numRuns: 2000 },
    );
  });

  it('more suction through the same hole is more flow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 3000, noNaN: true }),
        fc.double({ min: 0.2, max: 0.9, noNaN: true }),
        fc.constantFrom('far' as const, 'near' as const),
        (suction, ratio, tap) => {
          const flow = (p: number) =>
            numbersOf({
              kind: 'readings',
              rig: { method: 'orifice-cap', pipeDiameter_m: 0.15, tap },
              rows: [{ staticPressure_Pa: -p, orificeDiameter_m: 0.15 * ratio }],
            })[1]!;
          expect(flow(suction * 1.05)).toBeGreaterThan(flow(suction));
        },
      ),
    );
  });
});
