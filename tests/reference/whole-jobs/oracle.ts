/**
 * A second solver for whole jobs, written from the job document's formulas alone and sharing no line with `src`: tables
 * of each section's curve, bisection, fixed-point Colebrook, straight-line charts. Slow and simple on purpose.
 */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- documents, read field by field
type Json = any;

/** Flow against the square root of suction at a section's end: near a straight line, so straight lines between 2,000 points, closer near rest, do. */
type Table = { root: number[]; flow: number[] };

function flowIn({ root, flow }: Table, suction: number): number {
  const x = Math.sqrt(Math.max(suction, 0));
  let [a, b] = [0, root.length - 1];
  if (x >= root[b]!) return flow[b]! * (x / root[b]!);
  while (b - a > 1) {
    const m = (a + b) >> 1;
    if (root[m]! > x) b = m;
    else a = m;
  }
  return flow[a]! + ((flow[b]! - flow[a]!) * (x - root[a]!)) / (root[b]! - root[a]!);
}

/** Source: ISO 2533 pressure over altitude; ideal mixture of dry air and vapour, Magnus vapour pressure (WMO-No. 8). */
export function airOf({ altitude_m = 0, airTemperature_C = 20, relativeHumidity = 0.5 }: Json) {
  const p = 101325 * (1 - (0.0065 * altitude_m) / 288.15) ** 5.25588;
  const pv = relativeHumidity * 611.2 * Math.exp((17.62 * airTemperature_C) / (243.12 + airTemperature_C));
  const T = airTemperature_C + 273.15;
  const rho = (p - pv) / (287.055 * T) + pv / (461.5 * T);
  const mu = (1.716e-5 * (T / 273.15) ** 1.5 * (273.15 + 110.4)) / (T + 110.4);
  return { p, rho, mu };
}

function friction(Re: number, rough: number): number {
  if (Re <= 0) return 0;
  if (Re < 2000) return 64 / Re;
  let f = 0.02;
  for (let i = 0; i < 20; i++) f = (-2 * Math.log10(rough / 3.7 + 2.51 / (Math.max(Re, 4000) * Math.sqrt(f)))) ** -2;
  if (Re >= 4000) return f;
  return 64 / 2000 + ((f - 64 / 2000) * (Re - 2000)) / 2000;
}

const area = (d: number) => (Math.PI / 4) * d * d;

function elementLoss(e: Json, Q: number, air: { rho: number; mu: number }, loaded: boolean): number {
  const pv = (d: number) => (air.rho / 2) * (Q / area(d)) ** 2;
  switch (e.kind) {
    case 'pipe': {
      const Re = (air.rho * (Q / area(e.diameter_m)) * e.diameter_m) / air.mu;
      return friction(Re, e.roughness_m / e.diameter_m) * (e.length_m / e.diameter_m) * pv(e.diameter_m);
    }
    case 'reducer':
      return e.k * pv(Math.min(e.fromDiameter_m, e.toDiameter_m));
    case 'exit':
      return (e.k ?? 1) * (e.count ?? 1) * pv(e.diameter_m);
    case 'cyclone': {
      const a = e.inletDiameter_m ? area(e.inletDiameter_m) : e.inletWidth_m * e.inletHeight_m;
      return e.k * (air.rho / 2) * (Q / a) ** 2;
    }
    case 'filters': {
      const thin = e.airDensity_kg_m3 ? (air.rho / e.airDensity_kg_m3) ** (e.each.exponent - 1) : 1;
      return (
        thin *
        (loaded ? e.each.loadedPressure_Pa : e.each.cleanPressure_Pa) *
        (Q / e.count / e.each.cleanFlow_m3_s) ** e.each.exponent
      );
    }
    case 'fixed-resistance': {
      const thin = e.airDensity_kg_m3 ? (air.rho / e.airDensity_kg_m3) ** (e.exponent - 1) : 1;
      return thin * e.pressure_Pa * (Q / e.flow_m3_s) ** e.exponent;
    }
    default:
      return e.k * (e.count ?? 1) * pv(e.diameter_m);
  }
}

const STEPS = 2000;
const MOST_SUCTION = 40000;

export type OraclePoint = { flow: number; total: number; static: number; power: number; stable: boolean };

export class Oracle {
  readonly air: ReturnType<typeof airOf>;
  readonly sections: Json[];
  readonly job: Json;
  readonly blower: Json;
  readonly open: Set<string>;
  readonly loaded: boolean;
  constructor(job: Json, blower: Json, open: Set<string>, loaded: boolean) {
    this.job = job;
    this.blower = blower;
    this.open = open;
    this.loaded = loaded;
    this.air = airOf(job.site);
    this.sections = job.ductwork.sections;
  }

  own(s: Json, Q: number): number {
    let sum = s.elements.reduce((t: number, e: Json) => t + elementLoss(e, Q, this.air, this.loaded), 0);
    if (s.pickup && s.gate && !this.open.has(s.id))
      sum += (this.air.rho / 2) * (Q / (0.6 * s.gate.closedLeakArea_m2)) ** 2;
    return sum;
  }

  shut = (s: Json) => s.pickup && s.gate && !this.open.has(s.id) && !s.gate.closedLeakArea_m2;

  private readonly tables = new Map<string, Table>();

  /** Walks the section's own curve: from flows for a machine's section, from the junction's suction for a trunk. */
  private table(s: Json): Table {
    const known = this.tables.get(s.id);
    if (known) return known;
    const children = this.sections.filter((c) => c.into === s.id);
    const made: Table = { root: [0], flow: [0] };
    const steps = Array.from({ length: STEPS }, (_, i) => (i + 1) / STEPS);
    if (children.length > 0) {
      for (const t of steps) {
        const start = MOST_SUCTION * t ** 4;
        const q = children.reduce((sum, c) => sum + this.flowAt(c, start), 0);
        made.root.push(Math.sqrt(start + this.own(s, q)));
        made.flow.push(q);
      }
    } else if (s.pickup) {
      const most = this.own(s, 1) > 0 ? 3 * Math.sqrt(MOST_SUCTION / this.own(s, 1)) : 3;
      for (const t of steps) {
        made.root.push(Math.sqrt(this.own(s, most * t * t)));
        made.flow.push(most * t * t);
      }
    }
    this.tables.set(s.id, made);
    return made;
  }

  /** Flow of a section whose downstream end is at suction u [Pa below the room]. */
  flowAt(s: Json, u: number): number {
    if (this.shut(s)) return 0;
    const table = this.table(s);
    return table.root.length < 2 ? 0 : flowIn(table, u);
  }

  totalFlow = (u: number) =>
    this.sections.filter((s) => s.into === 'blower').reduce((t, s) => t + this.flowAt(s, u), 0);

  suctionAt(Q: number): number {
    let [a, b] = [0, 4 * MOST_SUCTION];
    for (let i = 0; i < 60; i++) {
      const m = (a + b) / 2;
      if (this.totalFlow(m) < Q) a = m;
      else b = m;
    }
    return (a + b) / 2;
  }

  discharge(Q: number): number {
    const run = this.job.ductwork.discharge ?? [];
    if (run.length === 0) return (this.air.rho / 2) * (Q / this.blower.outletArea_m2) ** 2;
    return run.reduce((t: number, e: Json) => t + elementLoss(e, Q, this.air, this.loaded), 0);
  }

  /** Speed the wheel runs at: stated, else plate × frequency ratio × pulleys. */
  get speed(): number {
    const { runSpeed_rpm, motor, drive } = this.blower;
    if (runSpeed_rpm) return runSpeed_rpm;
    const pulleys = drive.kind === 'belt' ? drive.motorPulleyDiameter_m / drive.wheelPulleyDiameter_m : 1;
    return ((motor.speed_rpm * this.job.supply.frequency_Hz) / motor.frequency_Hz) * pulleys;
  }

  /** Chart read by straight lines and brought to speed and air by the fan laws. */
  fan(Q: number): { static: number; total: number; power: number } {
    const c = this.blower.evidence[0];
    const n = this.speed / c.speed_rpm;
    const r = this.air.rho / c.airDensity_kg_m3;
    const at = (points: number[][], q: number) => {
      const after = points.findIndex((p) => p[0]! >= q);
      const i = after < 0 ? points.length - 1 : Math.max(after, 1);
      const [a, b] = [points[i - 1]!, points[i]!];
      return a[1]! + ((b[1]! - a[1]!) * (q - a[0]!)) / (b[0]! - a[0]!);
    };
    const pressure = at(c.pressure, Q / n) * n * n * r;
    const pv = (this.air.rho / 2) * (Q / this.blower.outletArea_m2) ** 2;
    const total = c.pressureKind === 'total' ? pressure : pressure + pv;
    const power = c.shaftPower
      ? at(c.shaftPower, Q / n) * n ** 3 * r
      : ((at(c.pressure, Q / n) * Q) / n / at(c.efficiency, Q / n)) * n ** 3 * r;
    return { total, static: total - pv, power };
  }

  /** All crossings, rising in flow, by walking along the suction side's rising curve. */
  points(): OraclePoint[] {
    const c = this.blower.evidence[0];
    const last = (c.pressure.at(-1)![0] * this.speed) / c.speed_rpm;
    const excess = (Q: number) => this.fan(Q).total - this.discharge(Q) - this.suctionAt(Q);
    const found: OraclePoint[] = [];
    const steps = 60;
    let before = this.fan(0).total;
    for (let i = 1; i <= steps; i++) {
      const [a, b] = [((i - 1) / steps) * last, (i / steps) * last];
      const here = excess(b);
      if (before > 0 !== here > 0) {
        let [lo, hi] = [a, b];
        for (let k = 0; k < 22; k++) {
          const m = (lo + hi) / 2;
          if (excess(m) > 0 === before > 0) lo = m;
          else hi = m;
        }
        const q = (lo + hi) / 2;
        found.push({ flow: q, ...this.fan(q), stable: before > 0 });
      }
      before = here;
    }
    return found;
  }

  /** Flow of every section when the blower moves Q. */
  sectionFlows(Q: number): Map<string, number> {
    const flows = new Map<string, number>();
    const u = this.suctionAt(Q);
    const walk = (s: Json, end: number) => {
      const q = this.flowAt(s, end);
      flows.set(s.id, q);
      const start = end - this.own(s, q);
      for (const c of this.sections.filter((x) => x.into === s.id)) walk(c, start);
    };
    for (const s of this.sections.filter((x) => x.into === 'blower')) walk(s, u);
    return flows;
  }

  /** Lowest speed over the pipes that still carry dust. */
  velocity(s: Json, flow: number): number | null {
    const pipes: number[] = [];
    for (const e of s.elements) {
      if (e.kind === 'cyclone' || e.kind === 'filters') break;
      if (e.kind === 'pipe') pipes.push(flow / area(e.diameter_m));
    }
    return pipes.length > 0 ? Math.min(...pipes) : null;
  }

  /** Some pipe that leads into a junction runs where friction is neither laminar nor turbulent. */
  isBetweenLaws(junction: string, flows: ReadonlyMap<string, number>): boolean {
    return this.sections
      .filter((s) => s.into === junction)
      .some((s) =>
        s.elements.some((e: Json) => {
          if (e.kind !== 'pipe') return false;
          const reynolds = (this.air.rho * (flows.get(s.id)! / area(e.diameter_m)) * e.diameter_m) / this.air.mu;
          return reynolds > 1800 && reynolds < 4400;
        }),
      );
  }

  load(power: number): number {
    const { motor, drive } = this.blower;
    const eta = drive.efficiency ?? (drive.kind === 'belt' ? 0.95 : 1);
    const mains = this.job.supply.frequency_Hz / motor.frequency_Hz;
    return power / eta / (motor.ratedPower_W * mains * (motor.serviceFactor ?? 1));
  }
}
