import { describe, expect, test } from 'vitest';
import {
  compileNetwork,
  lowestVelocity_m_s,
  transportOf,
  type Ductwork,
  type Element,
  type Section,
} from '../../../src/duct/index.ts';

const air = { density_kg_m3: 1, viscosity_Pa_s: 1.8e-5, pressure_Pa: 85000 };
const area = (d: number) => (Math.PI / 4) * d * d;
const pipe = (diameter_m: number, rise_m?: number): Element => ({
  kind: 'pipe',
  surface: 'drain-pipe',
  length_m: 2,
  diameter_m,
  rise_m,
});
const cyclone: Element = { kind: 'cyclone', inletDiameter_m: 0.15, k: 4 };
const filters: Element = {
  kind: 'filters',
  count: 2,
  each: { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 200, exponent: 1.5 },
};
const machine = (id: string, into: string, elements: Element[], more: Partial<Section> = {}): Section => ({
  id,
  into,
  elements,
  pickup: {},
  gate: {},
  ...more,
});
const transport = (ductwork: Ductwork, open: string[]) =>
  transportOf(compileNetwork(ductwork, { air, open, filterState: 'clean' }), 'wood-dust');

describe('where the air is slowest and dust still comes', () => {
  const shop: Ductwork = {
    sections: [
      machine('saw', 'main', [pipe(0.1), pipe(0.125, 2)]),
      machine('planer', 'main', [pipe(0.125)]),
      { id: 'main', into: 'blower', elements: [pipe(0.15), cyclone, pipe(0.2)] },
    ],
    discharge: [pipe(0.2), { kind: 'exit', diameter_m: 0.2 }],
  };

  test('the widest pipe before the cyclone counts', () => {
    const { sections } = transport(shop, ['saw', 'planer']);
    expect(sections[0]!.area_m2).toBeCloseTo(area(0.125), 12);
    expect(sections[2]!.area_m2).toBeCloseTo(area(0.15), 12);
    expect(lowestVelocity_m_s(sections[2]!, 20 * area(0.15))).toBeCloseTo(20, 9);
    expect(sections.map(({ judged }) => judged)).toEqual([true, true, true]);
    expect(sections.map(({ rising }) => rising)).toEqual([true, false, false]);
  });

  test('only the way of an open machine is judged', () => {
    expect(transport(shop, ['planer']).sections.map(({ judged }) => judged)).toEqual([false, true, true]);
    expect(transport(shop, []).sections.map(({ judged }) => judged)).toEqual([false, false, false]);
  });

  test('behind the cyclone nothing is judged, and the wheel is safe', () => {
    const { discharge, dustThroughWheel } = transport(shop, ['saw']);
    expect(dustThroughWheel).toBe(false);
    expect(discharge).toEqual({ area_m2: area(0.2), minimumVelocity_m_s: null, judged: false, rising: false });
  });

  test('a section without pipe has no speed', () => {
    const { sections } = transport({ sections: [machine('saw', 'blower', [cyclone])] }, ['saw']);
    expect(sections[0]).toMatchObject({ area_m2: null, judged: false, minimumVelocity_m_s: null });
    expect(lowestVelocity_m_s(sections[0]!, 0.3)).toBeNull();
  });

  test('a trunk is clean when each way into it passed a cyclone, and dusty when one did not', () => {
    const ductwork: Ductwork = {
      sections: [
        machine('saw', 'main', [pipe(0.1), cyclone]),
        machine('planer', 'main', [pipe(0.125)]),
        { id: 'main', into: 'blower', elements: [pipe(0.15)] },
      ],
    };
    expect(transport(ductwork, ['saw']).sections[2]!.judged).toBe(false);
    expect(transport(ductwork, ['saw']).dustThroughWheel).toBe(false);
    expect(transport(ductwork, ['saw', 'planer']).sections[2]!.judged).toBe(true);
    expect(transport(ductwork, ['saw', 'planer']).dustThroughWheel).toBe(true);
  });
});

describe('dust through the wheel', () => {
  const blowing: Ductwork = {
    sections: [machine('saw', 'blower', [pipe(0.1)], { pickup: { material: 'textile-lint' } })],
    discharge: [pipe(0.16), filters, pipe(0.3), { kind: 'exit', diameter_m: 0.3 }],
  };

  test('before filters on the pressure side the discharge is judged', () => {
    const { discharge, dustThroughWheel } = transport(blowing, ['saw']);
    expect(dustThroughWheel).toBe(true);
    expect(discharge).toEqual({ area_m2: area(0.16), minimumVelocity_m_s: 15, judged: true, rising: false });
  });

  test('not while the machine is shut', () => {
    const { discharge, dustThroughWheel } = transport(blowing, []);
    expect(dustThroughWheel).toBe(false);
    expect(discharge).toMatchObject({ minimumVelocity_m_s: null, judged: false, area_m2: area(0.3) });
  });
});

describe('whose lowest speed counts', () => {
  const minimum = (saw: Partial<Section>, main: Partial<Section> = {}, open = ['saw', 'planer']) =>
    transport(
      {
        sections: [
          machine('saw', 'main', [pipe(0.1)], saw),
          machine('planer', 'main', [pipe(0.1)], { pickup: { material: 'textile-lint' } }),
          { id: 'main', into: 'blower', elements: [pipe(0.15)], ...main },
        ],
      },
      open,
    ).sections.map(({ minimumVelocity_m_s }) => minimumVelocity_m_s);

  test("the machine's own, else the section's, else its material's, else the job's", () => {
    expect(minimum({ pickup: { minimumVelocity_m_s: 25 }, minimumVelocity_m_s: 18 })[0]).toBe(25);
    expect(minimum({ minimumVelocity_m_s: 18 })[0]).toBe(18);
    expect(minimum({ pickup: { material: 'light-powder' } })[0]).toBe(15);
    expect(minimum({})[0]).toBe(20);
  });

  test("a trunk's own, else the highest of what open machines send", () => {
    expect(minimum({}, { minimumVelocity_m_s: 12 })[2]).toBe(12);
    expect(minimum({})[2]).toBe(20);
    expect(minimum({}, {}, ['planer'])[2]).toBe(15);
    // With all shut the trunk shows what it would need.
    expect(minimum({}, {}, [])[2]).toBe(20);
  });
});
