import { describe, expect, it } from 'vitest';
import reference from '../../../fixtures/reference/cyclone.json' with { type: 'json' };
import { tables } from '../../../src/duct/index.ts';
import { shapeOf, withCycloneShape } from '../../../web/edits/cyclone-shape.ts';
import { jobWith, threeMachines } from '../web/ducts/shops.ts';

const { CYCLONE_PROPORTIONS, CYCLONE_SHAPES, cycloneSizes, CYCLONE_MODELS } = tables;

describe('proportions of cyclones', () => {
  // fixtures/reference/cyclone.json, `proportions`: exact on the ratios; velocity heads as printed beside them.
  it.each(CYCLONE_SHAPES)('%s is the handbook’s row, and loses the velocity heads printed beside it', (shape) => {
    const { inletHeight, inletWidth, outlet, source } = CYCLONE_PROPORTIONS[shape];
    const row = reference.sections.proportions.rows.find((r) => r.name === source)!;
    expect([inletHeight, inletWidth, outlet]).toEqual([row.a, row.b, row.De]);
    const heads = CYCLONE_MODELS[0].velocityHeads((inletHeight * inletWidth) / outlet ** 2);
    // 16·a·b/De² of the wide inlet is 8.0; the literature prints 7.2 beside it
    expect(Math.abs(heads / row.NH_printed - 1)).toBeLessThan(0.12);
  });

  it('are worked out from the body, or so that the inlet is as wide as the pipe', () => {
    expect(cycloneSizes('general-purpose', { bodyDiameter_m: 0.4 })).toEqual({
      bodyDiameter_m: 0.4,
      inletHeight_m: 0.2,
      inletWidth_m: 0.1,
      outletDiameter_m: 0.2,
    });
    const pipeArea_m2 = (Math.PI / 4) * 0.15 ** 2;
    const { inletHeight_m, inletWidth_m } = cycloneSizes('long-cone', { pipeArea_m2 });
    expect(Math.abs((inletHeight_m * inletWidth_m) / pipeArea_m2 - 1)).toBeLessThan(0.02);
  });

  it('come into a job with one tap, its own k gives way to that of the shape, and are known again', () => {
    const job = jobWith(threeMachines());
    const cyclone = { kind: 'cyclone' as const, inletDiameter_m: 0.15, k: 2 };
    const pointer = '/ductwork/sections/0/elements/0';
    for (const shape of CYCLONE_SHAPES) {
      const changed = withCycloneShape(job, pointer, cyclone, shape).ductwork.sections[0]!.elements[0]!;
      expect(changed).toMatchObject({ kind: 'cyclone', k: null });
      expect(changed.kind === 'cyclone' && shapeOf(changed)).toBe(shape);
    }
    const drum = { ...cyclone, bodyDiameter_m: 0.57, drum: { diameter_m: 0.57 } };
    const inPlace = withCycloneShape(job, pointer, drum, 'long-cone').ductwork.sections[0]!.elements[0]!;
    expect(inPlace.kind === 'cyclone' && inPlace.inletHeight_m! * inPlace.inletWidth_m!).toBeCloseTo(0.0177, 3);
    expect(shapeOf(cyclone)).toBe(null);
    expect(withCycloneShape(job, pointer, { kind: 'cyclone' }, 'long-cone')).toBe(job);
  });
});
