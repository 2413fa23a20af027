/** Charts in photos: from pixels and a few hints to curves in SI units. The only door of this folder. */
export { ChartHints, AXIS_QUANTITIES, type AxisHint, type AxisQuantity, type SeedHint } from './hints.ts';
export type { AxisReading, ChartReading, CurveReading } from './reading.ts';
export { preparePhoto, type Photo, type Raster } from '../picture/raster.ts';
export { createMemory, type Memory } from './memory.ts';
export { readChartIn } from './read-chart-in.ts';
export type { ChartStep } from './find-chart.ts';
export { areFull, layChartFlat, readHintedChart, readTaps, type FullHints } from './read-hinted.ts';
export type { StraightenedChart } from './straightened-chart.ts';
