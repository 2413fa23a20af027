import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import {
  DOUBT_KINDS,
  Element,
  ELEMENT_KINDS,
  elementKind,
  LOSS_PARTS,
  tables,
  termLoss_Pa,
  type LossTerm,
} from '../../../src/duct/index.ts';

const air = { density_kg_m3: 1, viscosity_Pa_s: 1.8e-5, pressure_Pa: 85000 };
const clean = { air, filterState: 'clean' } as const;
const loaded = { air, filterState: 'loaded' } as const;
const area = (d: number) => (Math.PI / 4) * d * d;
const terms = (element: Element, context: typeof clean | typeof loaded = clean): LossTerm[] =>
  elementKind(element.kind).losses(element, context);
const only = (element: Element, context: typeof clean | typeof loaded = clean): LossTerm => {
  const [term, ...more] = terms(element, context);
  expect(more).toEqual([]);
  return term!;
};
/** Flow that makes 20 m/s in a diameter. */
const at20 = (d: number) => 20 * area(d);
/** Velocity pressure at 20 m/s in this air: 200 Pa. */
const pv = 200;

describe('coefficients: a given k wins, count multiplies, doubt follows', () => {
  const given: Element[] = [
    { kind: 'entry', entry: 'plain', diameter_m: 0.1, k: 0.7 },
    { kind: 'fitting', fitting: 'elbow-90', radiusRatio: 1.5, diameter_m: 0.1, k: 0.7 },
    { kind: 'branch-entry', angle_deg: 45, diameter_m: 0.1, k: 0.7 },
    { kind: 'gate', opening: 0.5, diameter_m: 0.1, k: 0.7 },
    { kind: 'exit', diameter_m: 0.1, k: 0.7 },
    { kind: 'reducer', fromDiameter_m: 0.1, toDiameter_m: 0.2, k: 0.7 },
  ];

  test.each(given)('$kind', (element) => {
    expect(termLoss_Pa(only(element), at20(0.1), air)).toBeCloseTo(0.7 * pv, 9);
    expect(only(element).doubt.sd).toBe(0.1);
    expect(only({ ...element, doubt: 0.25 }).doubt.sd).toBe(0.25);
    const table = only({ ...element, k: null } as Element);
    expect(table.doubt.sd).not.toBe(0.1);
    expect(only({ ...element, k: undefined, doubt: 0.02 } as Element).doubt.sd).toBe(0.02);
    if (element.kind === 'reducer') return;
    expect(termLoss_Pa(only({ ...element, count: 3 } as Element), at20(0.1), air)).toBeCloseTo(2.1 * pv, 9);
    expect(termLoss_Pa(only({ ...element, count: 0 } as Element), at20(0.1), air)).toBe(0);
  });

  test('without k the tables speak', () => {
    const loss = (element: Element) => termLoss_Pa(only(element), at20(0.1), air) / pv;
    expect(loss({ kind: 'entry', entry: 'plain', diameter_m: 0.1 })).toBeCloseTo(0.93, 9);
    expect(loss({ kind: 'entry', diameter_m: 0.1 })).toBeCloseTo(0.93, 9);
    expect(loss({ kind: 'branch-entry', angle_deg: 30, diameter_m: 0.1 })).toBeCloseTo(0.18, 9);
    expect(loss({ kind: 'gate', diameter_m: 0.1 })).toBeCloseTo(0.05, 9);
    expect(loss({ kind: 'exit', diameter_m: 0.1 })).toBe(1);
    expect(loss({ kind: 'fitting', fitting: 'mitre-90', diameter_m: 0.1 })).toBeCloseTo(1.20208, 5);
    expect(loss({ kind: 'reducer', fromDiameter_m: 0.1, toDiameter_m: 0.2, coneAngle_deg: 180 })).toBeCloseTo(
      0.5625,
      9,
    );
    // From wide to narrow the small side is behind.
    expect(loss({ kind: 'reducer', fromDiameter_m: 0.2, toDiameter_m: 0.1, coneAngle_deg: 180 })).toBeCloseTo(0.375, 9);
  });

  test('a name outside the table is a label when k is given, and a mistake of the caller when it is not', () => {
    const pigtail: Element = { kind: 'fitting', fitting: 'pigtail', diameter_m: 0.1 };
    expect(only({ ...pigtail, k: 2 }).doubt.kind).toBe('fitting');
    expect(() => terms(pigtail)).toThrow('coefficientLoss: fitting has neither k nor a row; check the ductwork first');
  });
});

describe('pipe', () => {
  test('a given roughness wins over the surface, with 30 % doubt', () => {
    expect(only({ kind: 'pipe', surface: 'plywood', length_m: 2, diameter_m: 0.1, roughness_m: 1e-4 })).toEqual({
      law: 'friction',
      length_m: 2,
      diameter_m: 0.1,
      roughness_m: 1e-4,
      doubt: { kind: 'pipe-roughness', sd: 0.3 },
    });
  });

  test('hose errs with hose, an unknown surface errs most', () => {
    expect(only({ kind: 'pipe', surface: 'flexible-hose', length_m: 2, diameter_m: 0.1 }).doubt).toEqual({
      kind: 'hose-roughness',
      sd: 0.75,
    });
    expect(only({ kind: 'pipe', length_m: 2, diameter_m: 0.1 }).doubt.sd).toBe(0.9);
  });

  test('rising costs no pressure', () => {
    const flat: Element = { kind: 'pipe', surface: 'drain-pipe', length_m: 4, diameter_m: 0.1 };
    expect(terms({ ...flat, rise_m: 4 })).toEqual(terms(flat));
  });
});

describe('cyclone', () => {
  test('on the velocity pressure of its inlet, round or square', () => {
    expect(termLoss_Pa(only({ kind: 'cyclone', inletDiameter_m: 0.1, k: 4 }), at20(0.1), air)).toBeCloseTo(4 * pv, 9);
    expect(
      termLoss_Pa(only({ kind: 'cyclone', inletWidth_m: 0.05, inletHeight_m: 0.1, k: 4 }), 20 * 0.005, air),
    ).toBeCloseTo(4 * pv, 9);
  });

  test('an unknown outlet takes the middle of what drums lose, with much doubt', () => {
    expect(only({ kind: 'cyclone', inletDiameter_m: 0.1 })).toMatchObject({
      k: 3,
      doubt: { kind: 'cyclone', sd: 0.4 },
    });
  });

  test('the caller must have checked that there is an inlet', () => {
    expect(() => terms({ kind: 'cyclone', k: 2 })).toThrow('cyclone: expected an inlet size; check the ductwork first');
  });
});

describe('filters and measured resistances', () => {
  const filters: Element = {
    kind: 'filters',
    count: 4,
    each: { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 200, loadedPressure_Pa: 600, exponent: 1.5 },
  };

  test('side by side they share the flow; clean or loaded', () => {
    expect(termLoss_Pa(only(filters), 0.4, air)).toBeCloseTo(200, 9);
    expect(termLoss_Pa(only(filters), 0.2, air)).toBeCloseTo(200 / 2 ** 1.5, 9);
    expect(termLoss_Pa(only(filters, loaded), 0.4, air)).toBeCloseTo(600, 9);
  });

  test('a loaded pressure left out is the clean one; an exponent left out is 1.5, and half as sure', () => {
    const bare: Element = { kind: 'filters', count: 1, each: { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 200 } };
    expect(termLoss_Pa(only(bare, loaded), 0.1, air)).toBeCloseTo(200, 9);
    expect(only(bare)).toMatchObject({ exponent: 1.5, doubt: { kind: 'filters', sd: 0.2 } });
    expect(only(filters).doubt.sd).toBe(0.1);
  });

  test('measured in denser air: (ρ/ρ measured)^(exponent − 1), as the contract says', () => {
    expect(termLoss_Pa(only({ ...filters, airDensity_kg_m3: 1.21 }), 0.4, air)).toBeCloseTo(200 / 1.1, 9);
    const hole: Element = { kind: 'fixed-resistance', flow_m3_s: 0.2, pressure_Pa: 300, airDensity_kg_m3: 1.2 };
    expect(termLoss_Pa(only(hole), 0.2, air)).toBeCloseTo(250, 9);
    expect(termLoss_Pa(only({ ...hole, exponent: 1 }), 0.4, air)).toBeCloseTo(600, 9);
    expect(termLoss_Pa(only({ ...hole, airDensity_kg_m3: null }), 0.4, air)).toBeCloseTo(1200, 9);
  });
});

describe('the registry', () => {
  test.each(ELEMENT_KINDS.map((record) => [record.kind, record] as const))(
    '%s: record, schema, label and source',
    (kind, record) => {
      expect(elementKind(kind as Element['kind'])).toBe(record);
      expect(record.label.length).toBeGreaterThan(3);
      expect(record.source.length).toBeGreaterThan(10);
      const schema = z.toJSONSchema(record.fields) as {
        properties: Record<string, { const?: string }>;
        additionalProperties: boolean;
      };
      expect(schema.properties.kind!.const).toBe(kind);
      expect(schema.additionalProperties).toBe(false);
    },
  );

  test('the union of the schema and the registry hold the same kinds', () => {
    const kinds = (z.toJSONSchema(Element) as unknown as { oneOf: { properties: { kind: { const: string } } }[] })
      .oneOf;
    expect(kinds.map(({ properties }) => properties.kind.const).sort()).toEqual(
      ELEMENT_KINDS.map(({ kind }) => kind).sort(),
    );
  });

  test('every named fitting and entry works, and is offered by the schema', () => {
    const examples = (field: unknown): string[] =>
      (z.toJSONSchema(field as z.ZodType) as { examples: string[] }).examples;
    const offered = (
      Element.options.find(({ shape }) => shape.kind.value === 'fitting')!.shape as { fitting: z.ZodType }
    ).fitting;
    expect(examples(offered)).toEqual(tables.FITTING_NAMES);
    for (const fitting of tables.FITTING_NAMES) {
      const element: Element = { kind: 'fitting', fitting, diameter_m: 0.125 };
      const term = only(element);
      expect(termLoss_Pa(term, at20(0.125), air)).toBeGreaterThanOrEqual(0);
      expect(DOUBT_KINDS).toContain(term.doubt.kind);
      expect(LOSS_PARTS).toContain(elementKind('fitting').part(element));
    }
    for (const entry of tables.ENTRY_NAMES)
      expect(termLoss_Pa(only({ kind: 'entry', entry, diameter_m: 0.1 }), at20(0.1), air)).toBeGreaterThan(0);
  });

  test('an unknown kind is a mistake of the caller', () => {
    expect(() => elementKind('wormhole' as never)).toThrow('elementKind: expected a known kind, received wormhole');
  });
});
