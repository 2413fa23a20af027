import type { Lattice } from './lattice.ts';
import { turnedQuarter, type Margins } from './table-surface.ts';

/** How a sheet may lie on a photo: a lattice its writing stands on, and how much of it lies around that. */
export type SheetLies = { readonly lattice: Lattice; readonly margins: Margins };

/** The same seen from another side. @param quarters turns to the left */
export const turnedBy = (lies: SheetLies, quarters: number): SheetLies =>
  quarters === 0
    ? lies
    : turnedBy({ lattice: turnedQuarter(lies.lattice), margins: turnedMargins(lies.margins) }, quarters - 1);

const turnedMargins = ({ above, right, below, left }: Margins): Margins => ({
  above: right,
  right: below,
  below: left,
  left: above,
});
