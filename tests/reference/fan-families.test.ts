import { describe, expect, it } from 'vitest';
import reference from '../../fixtures/reference/fan_shapes.json' with { type: 'json' };
import { FAMILY, FAMILY_NAMES } from '../../src/fan/families.ts';
import type { Family, Knots } from '../../src/fan/families.ts';

/** Names in the reference file → names in the program. */
const NAMES: Record<string, Family> = {
  'forward-curved (multi-blade)': 'forward-curved',
  'backward-inclined flat blade': 'backward-inclined',
  'backward-curved': 'backward-curved',
  'straight radial / paddle': 'radial',
  'radial-tip': 'radial-tip',
  'tube / vane axial': 'axial',
  'universal-motor vacuum stage (one or two radial stages)': 'through-flow-vacuum',
};
const DRAWN: Record<string, Family> = {
  backward: 'backward-curved',
  radial: 'radial',
  'forward-curved': 'forward-curved',
  vacuum: 'through-flow-vacuum',
};

const values = (knots: Knots) => knots.map((k) => k[1]);
const dips = (shape: number[]) =>
  shape.some((v, i) => i > 0 && i < shape.length - 1 && v < shape[i - 1]! && shape.slice(i).some((w) => w > v));

describe('wheel families against handbook ranges (fixtures/reference/fan_shapes.json)', () => {
  // Eck, Bleier, Cordier: ranges, recalled. Exact: the table is the source.
  it('carries the handbook ranges', () => {
    const rows = reference.sections.families.rows.filter((row) => NAMES[row.family]);
    expect(rows).toHaveLength(7);
    for (const row of rows) {
      const family = FAMILY[NAMES[row.family]!];
      expect(family.psiAtBest).toEqual(row.psi_at_best_efficiency);
      expect(family.phiAtBest).toEqual(row.phi_at_best_efficiency);
      expect(family.peakTotalEfficiencyRange).toEqual(row.peak_total_efficiency);
      expect(family.bestFlowShare).toEqual(row.peak_efficiency_at_fraction_of_free_delivery);
      expect(family.tipSpeedLimit_m_s).toEqual(row.tip_speed_limit_m_s);
    }
  });

  // Shape features: forward-curved and radial overload, backward does not; forward-curved has a hump. Flags exact.
  it('knows which motors are worst off with everything open, and which curves dip', () => {
    for (const row of reference.sections.families.rows.filter((r) => NAMES[r.family])) {
      const family = FAMILY[NAMES[row.family]!];
      if (row.power_shape.includes('non-overloading')) expect(family.overloading).toBe(false);
      else if (row.power_shape.includes('to free delivery')) expect(family.overloading).toBe(true);
      expect(family.stallDip, row.family).toBe(row.pressure_shape.startsWith('dip'));
    }
    for (const name of FAMILY_NAMES) {
      const { overloading, stallDip, powerShape, staticShape } = FAMILY[name];
      if (name !== 'unknown') {
        expect(values(powerShape).at(-1) === 1, `${name}: greatest power at free delivery`).toBe(overloading);
        expect(dips(values(staticShape)), name).toBe(stallDip);
      }
    }
  });

  // Invented shapes that carry the features. 1e-12: the same numbers, power brought to a greatest value of 1.
  it('uses the drawn shapes', () => {
    for (const row of reference.sections.schematic_curves.rows) {
      const family = FAMILY[DRAWN[row.family]!];
      expect(family.staticShape.map((k) => k[0])).toEqual(row.q);
      expect(values(family.staticShape)).toEqual(row.p_over_p0);
      const top = Math.max(...row.P_over_Pfree);
      values(family.powerShape).forEach((p, i) => expect(p * top).toBeCloseTo(row.P_over_Pfree[i]!, 12));
    }
  });

  // Peak total efficiencies of the energy-audit table (radial 69–75 %, forward-curved 60–65 % read): warn outside by 10 points.
  it('has peak efficiencies near the energy-audit table', () => {
    const near = (family: Family, [low, high]: number[]) => {
      const [ours, best] = FAMILY[family].peakTotalEfficiencyRange;
      expect(best).toBeGreaterThan(low! - 0.1);
      expect(ours).toBeLessThan(high! + 0.1);
    };
    const rows = Object.fromEntries(reference.sections.peak_efficiency_table.rows.map((r) => [r.family, r.eff]));
    near('radial', rows.radial!);
    near('radial-tip', rows['modified radial']!);
    near('forward-curved', rows['forward curved']!);
    near('backward-curved', rows['airfoil / backward curved']!);
    near('axial', rows['tube axial']!);
  });

  it('starts every shape at one and ends it at zero, with the best point where the handbook has it', () => {
    for (const name of FAMILY_NAMES) {
      const { staticShape, powerShape, bestFlowShare } = FAMILY[name];
      expect(staticShape[0]).toEqual([0, 1]);
      expect(staticShape.at(-1)).toEqual([1, 0]);
      expect(Math.max(...values(powerShape))).toBe(1);
      expect(Math.min(...values(powerShape))).toBeGreaterThan(0.2);
      const efficiency = staticShape.map(([x, h], i) => (x * h) / powerShape[i]![1]);
      const best = staticShape[efficiency.indexOf(Math.max(...efficiency))]![0];
      expect(best, name).toBeGreaterThanOrEqual(bestFlowShare[0] - 0.05);
      expect(best, name).toBeLessThanOrEqual(bestFlowShare[1] + 0.05);
    }
  });

  // Own measurements named in textbooks: ψ near 1.85 for a textbook 36 in squirrel cage at 600 min⁻¹, 1.0–1.35 for dust-type wheels.
  it('expects shut-off pressures where textbook wheels have them', () => {
    const covers = (family: Family, psi: number) => {
      const { centre, lnSd } = FAMILY[family].psiShutOff;
      expect(Math.abs(Math.log(psi / centre)), `${family} ${psi} against ${centre}`).toBeLessThan(1.5 * lnSd);
    };
    covers('forward-curved', 1.85);
    for (const psi of [1.0, 1.35]) {
      covers('radial', psi * 1.05);
      covers('backward-inclined', psi * 0.95);
    }
    for (const psi of [1.0, 1.85]) covers('unknown', psi * 1.1);
  });

  it('lets the unknown wheel be any of them, and as weak as the weakest', () => {
    const known = FAMILY_NAMES.filter((n) => !['unknown', 'axial', 'through-flow-vacuum'].includes(n)).map(
      (n) => FAMILY[n],
    );
    const { psiShutOff, phiFree, deviation, tipSpeedLimit_m_s } = FAMILY.unknown;
    for (const family of known) {
      expect(Math.abs(Math.log(family.psiShutOff.centre / psiShutOff.centre))).toBeLessThan(2 * psiShutOff.lnSd);
      expect(Math.abs(Math.log(family.phiFree.centre / phiFree.centre))).toBeLessThan(2 * phiFree.lnSd);
      expect(deviation.sd).toBeGreaterThan(family.deviation.sd);
      expect(tipSpeedLimit_m_s[0]).toBeLessThanOrEqual(family.tipSpeedLimit_m_s[0]);
      expect(tipSpeedLimit_m_s[1]).toBeLessThanOrEqual(family.tipSpeedLimit_m_s[1]);
    }
  });
});
