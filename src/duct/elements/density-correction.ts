/**
 * Factor on a pressure loss measured in other air [-]: (ρ/ρ_measured)^(exponent − 1).
 * A loss that goes with Q^n is ρ^(n−1)·μ^(2−n) times geometry (dimensional analysis), and the viscosity of air hardly
 * changes: paper (n = 1) loses the same in thin air, a hole (n = 2) in proportion to the density.
 * Left out: the measurement is taken as given.
 */
export const densityCorrection = (
  density_kg_m3: number,
  measured_kg_m3: number | null | undefined,
  exponent: number,
): number => (measured_kg_m3 == null ? 1 : (density_kg_m3 / measured_kg_m3) ** (exponent - 1));
