import { describe, expect, test } from 'vitest';
import { checkJob } from '../../../src/job/check.ts';
import type { Issue, Result } from '../../../src/issues/result.ts';
import { smallJob, smallJobWith } from './small-job.ts';

const issuesOf = (result: Result<unknown>): Issue[] => (result.ok ? [] : result.issues);

const chart = '/blowers/0/evidence/0';

describe('what is understood but impossible', () => {
  test.each([
    [
      '/supply/lowestVoltage_V',
      410,
      'contradiction',
      '/supply/lowestVoltage_V',
      'The lowest voltage of the day (410 V) is above the mains voltage (400 V): look at both.',
    ],
    [
      '/blowers/0/motor',
      { ratedPower_W: 2200, current_A: 4.6, idleCurrent_A: 9.5 },
      'contradiction',
      '/blowers/0/motor/idleCurrent_A',
      'With the belt off the motor cannot draw 9.5 A when its plate says 4.6 A at full load.',
    ],
    [
      '/blowers/0/motor',
      { ratedPower_W: 750, phases: 1, fedThrough: 'capacitor' },
      'contradiction',
      '/blowers/0/motor/fedThrough',
      'Only a three-phase motor is fed through a capacitor or an inverter.',
    ],
    [
      '/blowers/0/motor',
      { ratedPower_W: 750, phases: 3, startsBy: 'split-phase' },
      'contradiction',
      '/blowers/0/motor/startsBy',
      'A three-phase motor needs nothing to get it turning: this is for one-phase motors.',
    ],
    [
      '/gatePlans/0/open',
      ['planner'],
      'unknown-pickup',
      '/gatePlans/0/open/0',
      'Gate plan "planer alone" opens "planner", which is not in the ducts; did you mean "planer"?',
    ],
    [
      '/gatePlans/0/open',
      ['planer', 'main'],
      'unknown-pickup',
      '/gatePlans/0/open/1',
      'Gate plan "planer alone" opens "main", which is a section without a pick-up; only pick-ups can be opened.',
    ],
    [
      '/gatePlans/1',
      { name: 'planer alone', open: [] },
      'duplicate-id',
      '/gatePlans/1/name',
      'Two gate plans are called "planer alone": give each a name of its own.',
    ],
    [
      `${chart}/pressure/1`,
      [0.4, 1500],
      'curve-not-a-function',
      `${chart}/pressure/2`,
      'The pressure curve has two values at 0.4 m3/s, 1500 and 1430: keep one.',
    ],
    [
      `${chart}/pressure`,
      [
        [0.2, 900],
        [0.2, 900],
      ],
      'contradiction',
      `${chart}/pressure`,
      'A pressure curve needs points at two different flows or more.',
    ],
    [
      `${chart}/pressure`,
      [
        [0, 0],
        [0.2, -5],
      ],
      'contradiction',
      `${chart}/pressure`,
      'No point of the pressure curve is above zero: such a blower moves no air.',
    ],
    [
      `${chart}/shaftPower/0`,
      [0, -700],
      'out-of-range',
      `${chart}/shaftPower/0/1`,
      'Shaft power must be 0 watts or more; -700 was given.',
    ],
    [
      `${chart}/efficiency`,
      [[0.2, 62]],
      'out-of-range',
      `${chart}/efficiency/0/1`,
      'Efficiency is a fraction from 0 to 1, like 0.62 for 62 %; 62 was given.',
    ],
    [
      chart,
      { kind: 'rated-point', flow_m3_s: 0, pressure_Pa: 0 },
      'contradiction',
      chart,
      'A rated point with neither flow nor pressure says nothing: give one of them.',
    ],
    [
      '/blowers/0/evidence/1/rows/0/orificeDiameter_m',
      0.2,
      'contradiction',
      '/blowers/0/evidence/1/rows/0/orificeDiameter_m',
      'A hole of 0.2 m does not fit into a pipe of 0.15 m: look at both diameters.',
    ],
  ])('%s = %j', (pointer, value, code, path, message) => {
    expect(issuesOf(checkJob(smallJobWith(pointer, value)))).toEqual([{ code, path, message }]);
  });

  test('two blowers under one id', () => {
    const job = smallJob();
    job.blowers.push(smallJob().blowers[0]!);
    expect(issuesOf(checkJob(job))).toEqual([
      {
        code: 'duplicate-id',
        path: '/blowers/1/id',
        message: 'Two blowers are called "b1": give each an id of its own.',
      },
    ]);
  });
});
