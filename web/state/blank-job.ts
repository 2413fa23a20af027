import type { Job } from '../../src/job/types.ts';

/** A job about which nothing is known yet but that one machine is to be piped to a blower. */
export const blankJob = (name: string): Job => ({
  format: 'blower-bench-job',
  version: 1,
  name,
  site: {},
  supply: {},
  material: 'wood-dust',
  blowers: [],
  ductwork: {
    sections: [
      {
        id: 'machine-1',
        into: 'blower',
        pickup: {},
        elements: [
          { kind: 'entry', entry: 'machine-port', diameter_m: 0.1 },
          { kind: 'pipe', surface: 'flexible-hose', length_m: 1, diameter_m: 0.1 },
          { kind: 'pipe', surface: 'drain-pipe', length_m: 3, diameter_m: 0.1 },
        ],
      },
    ],
    discharge: [],
    exhaust: 'outdoors',
  },
  requirement: {},
  asTyped: {},
});
