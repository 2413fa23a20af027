import { createState, solveWithFan, type FanCurve } from '../../src/duct/index.ts';
import { loadEngine } from '../reference/epanet.ts';
import { compileReference, fanOf, jobDuctwork, REFERENCE_NETWORKS, withOneFilter } from '../reference/network-form.ts';
import { printTimings, race } from './measure.ts';

const FORTY_BRANCHES = REFERENCE_NETWORKS.find(({ id }) => id === 'N12')!;

const ENGINE = 'engine, solved again, nothing changed';

/** The same fan at another speed: flows by the ratio, pressures by its square (fan laws). */
const atSpeed = (fan: FanCurve, ratio: number): FanCurve => ({
  pressure_Pa: (q) => ratio * ratio * fan.pressure_Pa(q / ratio),
  slope: (q) => ratio * fan.slope(q / ratio),
});

/**
 * One deterministic solve of the 40-branch reference network with its fan, beside a compiled general pipe-network engine
 * (epanet-js 0.9.0, loaded once, solved again from the flows it has). Both get the same network, its ten filters as one.
 */
export async function benchSolver(): Promise<void> {
  const reference = withOneFilter(FORTY_BRANCHES);
  const engine = await loadEngine(reference);
  const whole = await loadEngine(FORTY_BRANCHES);
  const network = compileReference(reference, jobDuctwork(reference));
  const fan = fanOf(reference);
  const slower = atSpeed(fan, 0.95);
  const bracket = [0, reference.fan.points_Q_m3_s__ptotal_Pa.at(-1)![0]] as const;
  const [same, changing] = [createState(network), createState(network)];
  let turn = 0;
  let engineTurn = 0;

  solveWithFan(network, fan, bracket, same);
  const difference = same.totalFlow_m3_s / engine.flow_m3_s('FAN') - 1;
  console.log(`40 branches: ${network.activeCount + 1} runs of ours, ${engine.linkCount()} links of the engine`);
  console.log(
    `fan flow: ours ${same.totalFlow_m3_s.toFixed(6)} m3/s, ${(difference * 100).toFixed(3)} % from the engine's (other friction formula)`,
  );

  const timings = race([
    { name: ENGINE, run: () => engine.solve() },
    { name: 'engine, the ten filters one by one', run: () => whole.solve() },
    { name: 'ours, solved again, nothing changed', run: () => solveWithFan(network, fan, bracket, same) },
    {
      name: 'engine, fan speed 5 % to and fro',
      run: () => {
        engine.setFanSpeed(engineTurn++ % 2 === 0 ? 0.95 : 1);
        engine.solve();
      },
    },
    {
      name: 'ours, fan speed 5 % to and fro',
      run: () => solveWithFan(network, turn++ % 2 === 0 ? slower : fan, bracket, changing),
    },
    { name: 'ours, cold start', run: () => solveWithFan(network, fan, bracket) },
    {
      name: 'ours, ducts read and cold start',
      run: () => solveWithFan(compileReference(reference, jobDuctwork(reference)), fan, bracket),
    },
  ]);
  printTimings('One solve with the fan', timings, ENGINE);
  engine.close();
  whole.close();
}
