import { describe, expect, it } from 'vitest';
import { checkJob, type Job } from '../../../../src/index.ts';
import { addBlower } from '../../../../web/edits/add-blower.ts';
import { takePlate, type TakePlate } from '../../../../web/edits/take-plate.ts';
import { blankJob } from '../../../../web/state/blank-job.ts';
import { withValueAt } from '../../../../web/state/pointer.ts';

const start = (): Job =>
  addBlower(blankJob('Shed'), { family: 'radial', ratedPower_W: 750, driveKind: 'belt', powerAsTyped: '1 HP' }).job;

const taken = (more: Partial<TakePlate>): TakePlate => ({
  blowerId: 'b1',
  photoId: 'plate',
  kind: 'motor',
  figures: [],
  motorKind: 'induction',
  powerMeaning: 'shaft',
  air: 'leave-out',
  ...more,
});
const MOTOR: TakePlate['figures'] = [
  { name: 'ratedPower_W', value: 2200, text: '2,2 kW' },
  { name: 'voltage_V', value: 380, text: '380 V' },
  { name: 'phases', value: 3, text: '3' },
  { name: 'speed_rpm', value: 2800, text: '2800 rpm' },
];
const AIR: TakePlate['figures'] = [
  { name: 'flow_m3_s', value: 1.68, text: '6050 m³/h' },
  { name: 'pressure_Pa', value: 735.5, text: '75 mm WG' },
  { name: 'speed_rpm', value: 1450, text: '1450 rpm' },
  { name: 'wheelDiameter_m', value: 0.56, text: '560 mm' },
];

describe('taking over a plate', () => {
  it('fills the motor, keeps what the plate does not say, the words of the plate and its photo', () => {
    const known = withValueAt(start(), '/blowers/0/motor', { ratedPower_W: 2237, rewound: true });
    const { job, note } = takePlate(known, taken({ figures: MOTOR }));
    expect(note).toBe('plate');
    expect(job.blowers[0]!.motor).toEqual({
      kind: 'induction',
      ratedPower_W: 2200,
      ratedPowerMeaning: 'shaft',
      voltage_V: 380,
      phases: 3,
      speed_rpm: 2800,
      rewound: true,
    });
    expect(job.asTyped!['/blowers/0/motor/ratedPower_W']).toBe('2,2 kW');
    expect(job.blowers[0]!.platePhotoIds).toEqual(['plate']);
    expect(checkJob(job).ok).toBe(true);
  });

  it('lets go of what was known of the old motor when its power says that it is another', () => {
    const motor = { ratedPower_W: 750, current_A: 4.7, efficiency: 0.81, rewound: true, fedThrough: 'inverter' };
    const { job } = takePlate(withValueAt(start(), '/blowers/0/motor', motor), taken({ figures: MOTOR }));
    expect(job.blowers[0]!.motor).toMatchObject({ ratedPower_W: 2200, voltage_V: 380, fedThrough: 'inverter' });
    expect(Object.keys(job.blowers[0]!.motor)).not.toEqual(
      expect.arrayContaining([expect.stringMatching(/current_A|efficiency|rewound/)]),
    );
  });

  it('keeps every photo once', () => {
    const once = takePlate(start(), taken({ figures: MOTOR })).job;
    const again = takePlate(once, taken({ figures: MOTOR })).job;
    const another = takePlate(again, taken({ figures: MOTOR, photoId: 'retaken' })).job;
    expect(another.blowers[0]!.platePhotoIds).toEqual(['plate', 'retaken']);
  });

  it('makes two points of a largest flow and a largest pressure, never one', () => {
    const { job } = takePlate(start(), taken({ kind: 'blower', figures: AIR, air: 'each-largest' }));
    const points = job.blowers[0]!.evidence;
    expect(points).toEqual([
      { kind: 'rated-point', flow_m3_s: 1.68, pressure_Pa: 0, speed_rpm: 1450, photoId: 'plate' },
      { kind: 'rated-point', flow_m3_s: 0, pressure_Pa: 735.5, speed_rpm: 1450, photoId: 'plate' },
    ]);
    expect(checkJob(job).ok).toBe(true);
  });

  it('makes one point only when told that they belong together, and none until told', () => {
    const one = takePlate(start(), taken({ kind: 'blower', figures: AIR, air: 'one-point' })).job;
    expect(one.blowers[0]!.evidence).toMatchObject([{ flow_m3_s: 1.68, pressure_Pa: 735.5 }]);
    const half = takePlate(start(), taken({ kind: 'blower', figures: AIR.slice(0, 1), air: 'one-point' })).job;
    expect(half.blowers[0]!.evidence).toEqual([{ kind: 'wheel' }]);
    const none = takePlate(one, taken({ kind: 'blower', figures: AIR })).job;
    expect(none.blowers[0]!.evidence).toEqual([{ kind: 'wheel' }]);
  });

  it('puts a blower’s speed to its wheel where nothing better is known, and leaves the motor’s nature alone', () => {
    const belt = takePlate(start(), taken({ kind: 'blower', figures: AIR, motorKind: 'universal' })).job.blowers[0]!;
    expect([belt.runSpeed_rpm, belt.motor.speed_rpm, belt.motor.kind]).toEqual([1450, undefined, undefined]);
    expect(belt.wheel.diameter_m).toBe(0.56);
    const pulleys = { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.2 };
    const known = withValueAt(start(), '/blowers/0/drive', pulleys);
    expect(takePlate(known, taken({ kind: 'blower', figures: AIR })).job.blowers[0]!.runSpeed_rpm).toBeUndefined();
    const direct = withValueAt(start(), '/blowers/0/drive', { kind: 'direct' });
    expect(takePlate(direct, taken({ kind: 'blower', figures: AIR })).job.blowers[0]!.motor.speed_rpm).toBe(1450);
  });

  it('does not take a motor’s speed for the wheel’s behind a belt', () => {
    const { job } = takePlate(start(), taken({ figures: AIR, air: 'each-largest' }));
    expect(job.blowers[0]!.evidence).toMatchObject([{ speed_rpm: null }, { speed_rpm: null }]);
  });

  it('tells from the capacitors how a one-phase motor starts', () => {
    const figures: TakePlate['figures'] = [
      { name: 'ratedPower_W', value: 550, text: '0,55 kW' },
      { name: 'phases', value: 1, text: '1' },
      { name: 'capacitor_uF', value: 16, text: '16 µF' },
    ];
    expect(takePlate(start(), taken({ figures })).job.blowers[0]!.motor.startsBy).toBe('run-capacitor');
    const three = figures.map((one) => (one.name === 'phases' ? { ...one, value: 3 } : one));
    expect(takePlate(start(), taken({ figures: three })).job.blowers[0]!.motor.startsBy).toBeUndefined();
  });
});
