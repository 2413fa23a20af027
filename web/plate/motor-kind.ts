import type { MotorKind, PlateWork } from './plate-work.ts';
import type { ShownFigure } from './shown-figures.ts';

/** No induction motor on 60 Hz turns faster [1/min]. Source: two poles, synchronous speed. */
const FASTEST_INDUCTION_rpm = 3600;

/** The kind of motor, as chosen or known; else what its speed tells: one that outruns the mains has brushes. */
export function motorKindOf(
  work: PlateWork,
  figures: readonly ShownFigure[],
  known: MotorKind | null | undefined,
): MotorKind {
  if (work.kind ?? known) return (work.kind ?? known)!;
  const speed_rpm = figures.find(({ form }) => form.name === 'speed_rpm')?.value ?? 0;
  return speed_rpm > FASTEST_INDUCTION_rpm ? 'universal' : 'induction';
}

/** Whether its watts are those at the shaft or those from the socket, as chosen or as the plate says. */
export const meaningOf = (work: PlateWork): 'shaft' | 'input' =>
  work.meaning ?? work.reading?.ratedPowerMeaning ?? 'shaft';
