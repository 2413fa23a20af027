import type { Random } from './random.ts';
import { circle_m2, friction_Pa, type TrueAir } from './true-air.ts';
import { rounded } from './true-motor.ts';

/** A shop whose true losses are not quite what its owner wrote down: k and filters off by 10 %, roughness by 30 %, half of the variance by kind. */
type Written = Record<string, unknown>;
/** `off`: what its true loss, or its true roughness, is multiplied by against what is written. */
type Piece = { written: Written; off: number; loss_Pa(flow_m3_s: number, air: TrueAir): number };

export type TrueShop = {
  ductwork: { sections: Written[]; discharge: Written[] };
  machines: string[];
  /** what the true losses of every section's elements, and of the discharge's, are multiplied by against what is written */
  off: Record<string, number[]>;
  /** inside diameter of every section's pipes [m] */
  diameter_m: Record<string, number>;
  /** what each open machine truly draws of the whole flow [m3/s] */
  drawn_m3_s(open: readonly string[], flow_m3_s: number, air: TrueAir): Record<string, number>;
  /** true total-pressure loss [Pa] with these machines open; the blower's own outlet is lost where the way out is empty */
  loss_Pa(open: readonly string[], flow_m3_s: number, air: TrueAir): number;
};

export type ShopWish = {
  /** where the first machine alone should run */
  flow_m3_s: number;
  /** total pressure the ducts shall lose there, the blower's free outlet not counted [Pa] */
  pressure_Pa: number;
  /** diameter of the pipe behind the blower; null: it blows freely */
  wayOut_m: number | null;
  outletArea_m2: number;
  air: TrueAir;
  /** what every machine asks for, as a share of that flow; left out 0.9 */
  asked?: number;
};

const K_DOUBT = 0.1;
const ROUGHNESS_DOUBT = 0.3;

export function trueShop(wish: ShopWish, random: Random): TrueShop {
  const { air } = wish;
  const byKind = new Map<string, number>();
  const off = (kind: string, sd: number) => {
    if (!byKind.has(kind)) byKind.set(kind, random.normal());
    return Math.exp(sd * Math.SQRT1_2 * (byKind.get(kind)! + random.normal()));
  };
  const withK = (written: Written, kind: string, k: number, area_m2: number): Piece => {
    const told = rounded(k, 3);
    const factor = off(kind, K_DOUBT);
    const truth = told * factor;
    return {
      written: { ...written, k: told },
      off: factor,
      loss_Pa: (q, a) => truth * (a.density_kg_m3 / 2) * (q / area_m2) ** 2,
    };
  };
  const pipe = (surface: string, length_m: number, diameter_m: number, roughness_m: number): Piece => {
    const told = { surface, length_m: rounded(length_m, 2), diameter_m, roughness_m };
    const factor = off(surface === 'flexible-hose' ? 'hose' : 'pipe', ROUGHNESS_DOUBT);
    const roughness = roughness_m * factor;
    return {
      written: { kind: 'pipe', ...told },
      off: factor,
      loss_Pa: (q, a) => friction_Pa({ ...told, roughness_m: roughness }, q, a),
    };
  };
  const sum = (pieces: readonly Piece[], q: number, a: TrueAir) => pieces.reduce((t, p) => t + p.loss_Pa(q, a), 0);
  const elbows = (d: number) =>
    withK({ kind: 'fitting', fitting: 'elbow-90', diameter_m: d }, 'elbow', random.uniform(0.15, 0.4), circle_m2(d));

  const sized = (speed: number) => Math.max(0.03, rounded(Math.sqrt(wish.flow_m3_s / speed / (Math.PI / 4)), 3));
  let slower = 1;
  for (;;) {
    const leafDiameter = sized(random.uniform(15, 24) / slower);
    const mainDiameter = Math.max(leafDiameter, sized(random.uniform(9, 22) / slower));
    const leafOf = () => [
      withK({ kind: 'entry', diameter_m: leafDiameter }, 'entry', random.uniform(0.3, 0.9), circle_m2(leafDiameter)),
      pipe('flexible-hose', random.uniform(0.5, 2), leafDiameter, 0.002),
      ...(random.chance(0.6) ? [elbows(leafDiameter)] : []),
      withK(
        { kind: 'branch-entry', angle_deg: 45, diameter_m: leafDiameter },
        'branch-entry',
        random.uniform(0.2, 0.4),
        circle_m2(leafDiameter),
      ),
    ];
    const leaves = Array.from({ length: random.integer(1, 3) }, leafOf);
    const main = [
      pipe('drain-pipe', random.uniform(2, 8), mainDiameter, 0.0001),
      elbows(mainDiameter),
      withK(
        { kind: 'cyclone', inletDiameter_m: mainDiameter },
        'cyclone',
        random.uniform(1, 3),
        circle_m2(mainDiameter),
      ),
    ];
    const wayOut =
      wish.wayOut_m === null
        ? []
        : [
            pipe('galvanised-duct', random.uniform(1, 4), wish.wayOut_m, 0.00015),
            withK({ kind: 'exit', diameter_m: wish.wayOut_m }, 'exit', 1, circle_m2(wish.wayOut_m)),
          ];
    const spare =
      wish.pressure_Pa -
      sum(leaves[0]!, wish.flow_m3_s, air) -
      sum(main, wish.flow_m3_s, air) -
      sum(wayOut, wish.flow_m3_s, air);
    if (spare < 0.05 * wish.pressure_Pa && slower < 12) {
      slower *= 1.15;
      continue;
    }
    if (spare > 0) fillUp(spare, { leaves, main, leafDiameter, mainDiameter });
    return finished(leaves, main, wayOut, { leafDiameter, mainDiameter });
  }

  /** What pressure is left over goes to the machine's own resistance, the filters and a measured element. */
  function fillUp(
    spare_Pa: number,
    to: { leaves: Piece[][]; main: Piece[]; leafDiameter: number; mainDiameter: number },
  ) {
    const share = [random.uniform(0.2, 1), random.uniform(0, 1), random.chance(0.4) ? random.uniform(0, 1) : 0];
    const whole = share.reduce((a, b) => a + b);
    const [hood, filters, measured] = share.map((s) => (spare_Pa * s) / whole) as [number, number, number];
    const dynamic = (d: number) => (air.density_kg_m3 / 2) * (wish.flow_m3_s / circle_m2(d)) ** 2;
    for (const leaf of to.leaves)
      leaf.push(
        withK(
          { kind: 'fitting', fitting: 'tee-through', diameter_m: to.leafDiameter },
          'fitting',
          hood / dynamic(to.leafDiameter),
          circle_m2(to.leafDiameter),
        ),
      );
    const power = (kind: 'filters' | 'fixed-resistance', pressure: number, exponent: number): Piece => {
      const told = rounded(pressure, 1);
      const factor = off(kind, K_DOUBT);
      const truth = told * factor;
      const written =
        kind === 'filters'
          ? {
              kind,
              count: 1,
              each: { cleanFlow_m3_s: wish.flow_m3_s, cleanPressure_Pa: told, loadedPressure_Pa: told, exponent },
            }
          : { kind, flow_m3_s: wish.flow_m3_s, pressure_Pa: told, exponent };
      return { written, off: factor, loss_Pa: (q) => truth * (q / wish.flow_m3_s) ** exponent };
    };
    if (filters > 1) to.main.push(power('filters', filters, rounded(random.uniform(1.1, 1.8), 2)));
    if (measured > 1) to.main.push(power('fixed-resistance', measured, rounded(random.uniform(1.5, 2), 2)));
  }

  function finished(
    leaves: Piece[][],
    main: Piece[],
    wayOut: Piece[],
    sizes: { leafDiameter: number; mainDiameter: number },
  ): TrueShop {
    const machines = leaves.map((_, i) => `m${i + 1}`);
    const section = (id: string, into: string, pieces: readonly Piece[]) => ({
      id,
      into,
      elements: pieces.map((p) => p.written),
    });
    return {
      machines,
      ductwork: {
        sections: [
          ...leaves.map((leaf, i) => ({
            ...section(machines[i]!, 'main', leaf),
            pickup: { machine: machines[i]!, requiredFlow_m3_s: rounded((wish.asked ?? 0.9) * wish.flow_m3_s, 3) },
            gate: {},
          })),
          section('main', 'blower', main),
        ],
        discharge: wayOut.map((p) => p.written),
      },
      off: {
        ...Object.fromEntries(machines.map((m, i) => [m, leaves[i]!.map((p) => p.off)])),
        main: main.map((p) => p.off),
        discharge: wayOut.map((p) => p.off),
      },
      diameter_m: {
        ...Object.fromEntries(machines.map((m) => [m, sizes.leafDiameter])),
        main: sizes.mainDiameter,
      },
      drawn_m3_s(open, q, a) {
        const parts = leaves.filter((_, i) => open.includes(machines[i]!));
        const suction = sharedLoss(parts, q, a);
        return Object.fromEntries(
          machines.flatMap((m, i) => (open.includes(m) ? [[m, drawnAt(suction, leaves[i]!, q, a)]] : [])),
        );
      },
      loss_Pa(open, q, a) {
        const parts = leaves.filter((_, i) => open.includes(machines[i]!));
        const out = wayOut.length > 0 ? sum(wayOut, q, a) : (a.density_kg_m3 / 2) * (q / wish.outletArea_m2) ** 2;
        return sharedLoss(parts, q, a) + sum(main, q, a) + out;
      },
    };
  }

  /** Flow at which a branch loses this suction, by halving. */
  function drawnAt(suction: number, branch: readonly Piece[], most: number, a: TrueAir): number {
    let [low, high] = [0, most];
    for (let i = 0; i < 26; i++) {
      const middle = (low + high) / 2;
      if (sum(branch, middle, a) < suction) low = middle;
      else high = middle;
    }
    return low;
  }

  /** Suction at which branches side by side draw this flow together, by halving. */
  function sharedLoss(branches: readonly Piece[][], q: number, a: TrueAir): number {
    if (branches.length === 1) return sum(branches[0]!, q, a);
    const drawn = (suction: number) => branches.reduce((t, b) => t + drawnAt(suction, b, q, a), 0);
    let [low, high] = [0, sum(branches[0]!, q, a)];
    for (let i = 0; i < 26; i++) {
      const middle = (low + high) / 2;
      if (drawn(middle) < q) low = middle;
      else high = middle;
    }
    return low;
  }
}
