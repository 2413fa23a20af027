/**
 * What a fan curve belongs to. Diameters are given for both states or for neither (the same wheel).
 */
export type FanState = {
  /** speed of the wheel [1/min], > 0 */
  speed_rpm: number;
  /** outside diameter of the wheel [m], > 0 */
  diameter_m?: number | null;
  /** density of the air in the fan [kg/m3], > 0 */
  airDensity_kg_m3: number;
};

/** One point of a fan curve; the pressure may be static or total, the law is the same. */
export type FanPoint = {
  /** [m3/s] */
  flow_m3_s: number;
  /** [Pa] */
  pressure_Pa: number;
  /** at the wheel's shaft, without drive loss [W]; null or left out is unknown */
  shaftPower_W?: number | null;
};

/** Factors [-] that take flow, pressure and shaft power from one state to another. */
export type FanScale = { flow: number; pressure: number; power: number };

/**
 * Fan laws as three factors: flow ~ n·D³, pressure ~ ρ·n²·D², power ~ ρ·n³·D⁵; efficiency does not change.
 * Holds for geometrically similar wheels; Reynolds and compressibility effects are neglected (about 1 % within a factor
 * two of speed and below 3 kPa).
 * Source: ISO 5801:2017, 15.3 (fan laws); the same in every handbook.
 * Throws RangeError for a speed, diameter or density that is not positive, or for only one diameter.
 */
export function fanScale(from: FanState, to: FanState): FanScale {
  const n = positive('speed_rpm', to.speed_rpm) / positive('speed_rpm', from.speed_rpm);
  const rho = positive('airDensity_kg_m3', to.airDensity_kg_m3) / positive('airDensity_kg_m3', from.airDensity_kg_m3);
  if ((from.diameter_m == null) !== (to.diameter_m == null)) {
    throw new RangeError(
      `diameter_m: expected in both states or in neither, received ${from.diameter_m} and ${to.diameter_m}`,
    );
  }
  const d =
    from.diameter_m == null || to.diameter_m == null
      ? 1
      : positive('diameter_m', to.diameter_m) / positive('diameter_m', from.diameter_m);
  return { flow: n * d ** 3, pressure: rho * n ** 2 * d ** 2, power: rho * n ** 3 * d ** 5 };
}

/**
 * A fan point at another speed, size or density. Source and limits: `fanScale`.
 * Unknown shaft power stays unknown.
 */
export function scaleFanPoint(point: FanPoint, from: FanState, to: FanState): FanPoint {
  const scale = fanScale(from, to);
  return {
    flow_m3_s: point.flow_m3_s * scale.flow,
    pressure_Pa: point.pressure_Pa * scale.pressure,
    shaftPower_W: point.shaftPower_W == null ? point.shaftPower_W : point.shaftPower_W * scale.power,
  };
}

/**
 * Velocity pressure ρ/2·(Q/A)² of a flow in an opening.
 * @param flow_m3_s volume flow [m3/s]; the sign does not matter
 * @param area_m2 area of the opening [m2], > 0
 * @param airDensity_kg_m3 density [kg/m3]
 * @returns velocity pressure [Pa]. Source: definition (Bernoulli). Throws RangeError for an area that is not positive.
 */
export function velocityPressure(flow_m3_s: number, area_m2: number, airDensity_kg_m3: number): number {
  return (airDensity_kg_m3 / 2) * (flow_m3_s / positive('area_m2', area_m2)) ** 2;
}

/** The outlet that turns fan static into fan total pressure: where the flow leaves, and in which air. */
export type Outlet = { flow_m3_s: number; outletArea_m2: number; airDensity_kg_m3: number };

/**
 * Fan total pressure [Pa] from fan static pressure [Pa]: the outlet's velocity pressure is added.
 * Source: ISO 5801, definition: fan static = fan total − velocity pressure at the outlet.
 */
export function totalFromStatic(staticPressure_Pa: number, outlet: Outlet): number {
  return staticPressure_Pa + velocityPressure(outlet.flow_m3_s, outlet.outletArea_m2, outlet.airDensity_kg_m3);
}

/**
 * Fan static pressure [Pa] from fan total pressure [Pa]; not the difference of the static pressures at inlet and outlet.
 * Source: ISO 5801, definition.
 */
export function staticFromTotal(totalPressure_Pa: number, outlet: Outlet): number {
  return totalPressure_Pa - velocityPressure(outlet.flow_m3_s, outlet.outletArea_m2, outlet.airDensity_kg_m3);
}

/**
 * Speed of the wheel's rim, u = π·D·n.
 * @returns tip speed [m/s]. Source: definition. Throws RangeError for a diameter or speed that is not positive.
 */
export function tipSpeed(diameter_m: number, speed_rpm: number): number {
  return (Math.PI * positive('diameter_m', diameter_m) * positive('speed_rpm', speed_rpm)) / 60;
}

/** A wheel in its air: what size-free numbers are made with. */
export type SizedState = { speed_rpm: number; diameter_m: number; airDensity_kg_m3: number };

/**
 * One unit of each size-free number of a wheel, so that φ = Q/flow_m3_s, ψ = p/pressure_Pa, λ = P/power_W and η = φ·ψ/λ:
 * flow π/4·D²·u [m3/s], pressure ρ/2·u² [Pa], power their product [W].
 * Other texts use p/(ρu²), half of this ψ, or Q/(u·D²). Source: B. Eck, Fans (1973), definitions of φ, ψ, λ.
 */
export function dimensionlessUnits(state: SizedState): { flow_m3_s: number; pressure_Pa: number; power_W: number } {
  const u = tipSpeed(state.diameter_m, state.speed_rpm);
  const flow_m3_s = (Math.PI / 4) * state.diameter_m ** 2 * u;
  const pressure_Pa = (positive('airDensity_kg_m3', state.airDensity_kg_m3) / 2) * u ** 2;
  return { flow_m3_s, pressure_Pa, power_W: flow_m3_s * pressure_Pa };
}

function positive(name: string, value: number): number {
  if (!(value > 0 && Number.isFinite(value)))
    throw new RangeError(`${name}: expected a positive number, received ${value}`);
  return value;
}
