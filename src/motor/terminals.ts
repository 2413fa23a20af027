import type { MotorAtSite } from './at-site.ts';
import { cableDrop } from './cable.ts';
import { drawnBy } from './current.ts';

/** Rounds of volts → amps → volts; the drop of a cable fit for work settles in three. */
const ROUNDS = 12;
/** Below this share of its volts the motor has long stopped; the answer only has to stay a number. */
const LEAST_SHARE = 0.3;

/**
 * Volts at a motor's terminals, in the plate's connection, when the board has `board_V` and a cable lies between [V].
 * @param shaftPower_W at the motor's shaft [W]
 * A motor draws more amps at fewer volts, so drop and amps are found together. Without a cable the board's own volts.
 * Source: `cableDrop` and `drawnBy`, repeated until they agree.
 */
export function terminalVoltage(at: MotorAtSite, board_V: number, shaftPower_W: number): number {
  const { cable, connection, current, plate } = at;
  if (!cable || connection.kind === 'single-phase-feed') return board_V;
  const reconnected = connection.kind === 'star-delta' ? connection.voltageFactor : 1;
  let volts = board_V;
  for (let round = 0; round < ROUNDS; round++) {
    const drawn = drawnBy(current, shaftPower_W, volts);
    const { drop_V } = cableDrop(cable, {
      supply_V: board_V / reconnected,
      current_A: drawn.current_A * connection.currentFactor,
      powerFactor: drawn.powerFactor,
      phases: plate.phases,
    });
    volts = Math.max(board_V - drop_V * reconnected, LEAST_SHARE * board_V);
  }
  return volts;
}
