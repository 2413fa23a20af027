/** Something to be timed, named for the table. */
export type Contender = { name: string; run: () => void };

export type Timing = { name: string; median_us: number; fastest_us: number };

const BATCHES = 61;
const BATCH_US = 4000;

const time_us = (run: () => void, times: number): number => {
  const start = process.hrtime.bigint();
  for (let i = 0; i < times; i++) run();
  return Number(process.hrtime.bigint() - start) / 1000 / times;
};

/**
 * Times contenders against each other in one process: batches of a few milliseconds in turn, so that whatever else the
 * machine does meets all of them alike. One warm-up batch each, then the median and the fastest batch [µs a run].
 */
export function race(contenders: readonly Contender[]): Timing[] {
  const sizes = contenders.map(({ run }) => {
    time_us(run, 200);
    return Math.max(1, Math.round(BATCH_US / time_us(run, 50)));
  });
  const batches = contenders.map((): number[] => []);
  for (let batch = 0; batch < BATCHES; batch++) {
    contenders.forEach(({ run }, i) => batches[i]!.push(time_us(run, sizes[i]!)));
  }
  return contenders.map(({ name }, i) => {
    const sorted = batches[i]!.sort((a, b) => a - b);
    return { name, median_us: sorted[(BATCHES - 1) / 2]!, fastest_us: sorted[0]! };
  });
}

/** A table of timings, with ratios to the named one. */
export function printTimings(title: string, timings: readonly Timing[], against: string): void {
  const reference = timings.find(({ name }) => name === against)!.median_us;
  console.log(`\n${title}\n${'median µs'.padStart(11)}${'fastest µs'.padStart(12)}${'ratio'.padStart(8)}`);
  for (const { name, median_us, fastest_us } of timings) {
    const cells = [
      median_us.toFixed(1).padStart(11),
      fastest_us.toFixed(1).padStart(12),
      (median_us / reference).toFixed(2).padStart(8),
    ];
    console.log(`${cells.join('')}  ${name}`);
  }
}
