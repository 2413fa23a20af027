import { formatQuantity } from '../../units/format.ts';
import { at, set, type ChangeMaker } from '../change.ts';
import { testedWithOldDrive } from '../tested-with.ts';

/** Rated powers of motors as sold [W]. Source: IEC 60072-1 preferred outputs (from memory). */
const OUTPUTS_W = [
  180, 250, 370, 550, 750, 1100, 1500, 2200, 3000, 4000, 5500, 7500, 11000, 15000, 18500, 22000, 30000, 37000, 45000,
  55000, 75000,
];

/** Beyond this many times the old motor hardly anything of base, cable and switch can stay. Common practice, no source. */
const MOST_LARGER = 4;

/** A larger motor of the same speed. */
export const largerMotor: ChangeMaker = {
  kind: 'motor',
  propose({ job, index, motorOverloaded }) {
    const blower = job.blowers[index]!;
    const { motor } = blower;
    if (!motorOverloaded || (motor.kind ?? 'induction') !== 'induction') return [];
    return OUTPUTS_W.filter((w) => w > 1.02 * motor.ratedPower_W && w < MOST_LARGER * motor.ratedPower_W).map(
      (ratedPower_W) => ({
        what: `Put a motor of ${formatQuantity(ratedPower_W, 'kW')} of the same speed in place of ${formatQuantity(motor.ratedPower_W, 'kW')}, cable, switch and overload relay matched by an electrician`,
        values: { ratedPower_W, old_W: motor.ratedPower_W },
        patch: [
          set(at('blowers', index, 'motor'), {
            ...motor,
            ratedPower_W,
            current_A: null,
            powerFactor: null,
            efficiency: null,
            serviceFactor: null,
            idleCurrent_A: null,
            rewound: null,
          }),
          ...testedWithOldDrive(blower, index),
        ],
      }),
    );
  },
};
