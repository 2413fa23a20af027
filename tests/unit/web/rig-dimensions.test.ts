import { describe, expect, it } from 'vitest';
import { METHOD_NAMES, type Rig } from '../../../src/readings/index.ts';
import { LANGUAGES } from '../../../web/texts/index.ts';
import { rigDimensions, tapPlace } from '../../../web/readings/rig-dimensions.ts';

const built = (rig: Rig) =>
  Object.fromEntries(rigDimensions(rig).map((d) => [d.name, { size_m: d.size_m, rule: d.rule, short: d.short }]));

describe('the sizes a rig is built to', () => {
  it('a far tap: 8 diameters unless told; told shorter than 5 is called short', () => {
    const cap: Rig = { method: 'orifice-cap', tap: 'far', pipeDiameter_m: 0.15 };
    expect(built(cap)['toTap']).toEqual({
      size_m: expect.closeTo(1.2, 9) as number,
      rule: { times: 8, of: 'D', orMore: false },
      short: false,
    });
    expect(built({ ...cap, lengthToTap_m: 0.75 })['toTap']).toMatchObject({ size_m: 0.75, short: false });
    expect(built({ ...cap, lengthToTap_m: 0.7 })['toTap']).toMatchObject({
      rule: { times: 5, of: 'D', orMore: true },
      short: true,
    });
    expect(built({ ...cap, tap: 'near' })['toTap']!.size_m).toBeCloseTo(0.06, 9);
  });

  it('a traverse: 8 diameters before and 2 after, a channel by its hydraulic diameter', () => {
    const pitot = built({ method: 'pitot-traverse', width_m: 0.3, height_m: 0.15 });
    // 2·0.3·0.15 ÷ 0.45 = 0.2 m
    expect(pitot['before']!.size_m).toBeCloseTo(1.6, 9);
    expect(pitot['after']!.size_m).toBeCloseTo(0.4, 9);
  });

  it('a cone opens to twice its throat; a bell is rounded by a quarter; both are tapped half a throat behind', () => {
    const cone = built({ method: 'conical-inlet', throatDiameter_m: 0.12 });
    expect(cone['coneOpening']!.size_m).toBeCloseTo(0.24, 9);
    expect(cone['throatTap']!.size_m).toBeCloseTo(0.06, 9);
    expect(built({ method: 'bell-mouth', throatDiameter_m: 0.12 })['bellRadius']!.size_m).toBeCloseTo(0.03, 9);
  });

  it('plate taps stand at its faces, an inch off, or a whole and half a diameter (ISO 5167-2, 5.2)', () => {
    const taps = (tappings: Rig['tappings']) => {
      const sizes = built({ method: 'orifice-in-pipe', pipeDiameter_m: 0.2, tappings });
      return [sizes['plateTapBefore']!.size_m, sizes['plateTapAfter']!.size_m];
    };
    expect([taps('corner'), taps('flange'), taps('D-and-half-D')]).toEqual([
      [0, 0],
      [0.0254, 0.0254],
      [0.2, 0.1],
    ]);
  });

  it.each(METHOD_NAMES)('%s: letters differ, spans lie on the pipe, all has its words', (method) => {
    for (const side of ['inlet', 'outlet'] as const) {
      const rig: Rig = {
        method,
        side,
        pipeDiameter_m: 0.15,
        throatDiameter_m: 0.12,
        hubDiameter_m: 0.05,
        anemometerDiameter_m: 0.03,
      };
      const dimensions = rigDimensions(rig);
      expect(new Set(dimensions.map((d) => d.letter)).size).toBe(dimensions.length);
      for (const { span, letter, name } of dimensions) {
        expect(letter).not.toBe('');
        for (const at of span ?? []) expect(at >= 0 && at <= 1).toBe(true);
        for (const { texts } of Object.values(LANGUAGES))
          expect(texts.readings.dimensions[name].length).toBeGreaterThan(1);
      }
      expect(tapPlace(rig)).toBeLessThan(1);
    }
  });
});
