/** Units at the edges: what people type becomes numbers in base units, and numbers become text. */
export { QUANTITIES, type Quantity } from './quantities.ts';
export { UNITS, type Unit } from './units.ts';
export { fromBase, toBase, unitByName, unitCalled, unitsOf } from './names.ts';
export { parseQuantity, type ParsedQuantity } from './parse.ts';
export { formatIn, formatNumber, formatQuantity, formatRange, formatTwin, twinOf } from './format.ts';
