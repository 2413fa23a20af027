/** How suction stands in the job: with the minus of the other rows, or as it is read from the tube. */
export type SuctionSign = 'minus' | 'none';

/** A typed suction as it goes into the job, like its neighbours. */
export const signed = (value: number, sign: SuctionSign | undefined): number =>
  sign === 'minus' ? -Math.abs(value) : value;

/** A suction from the job as it is shown: as it is read from the tube. */
export const unsigned = <T>(value: T | number, sign: SuctionSign | undefined): T | number =>
  sign !== undefined && typeof value === 'number' ? Math.abs(value) : value;
