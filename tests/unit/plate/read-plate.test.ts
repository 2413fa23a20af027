import { describe, expect, test } from 'vitest';
import { readPlate } from '../../../src/plate/index.ts';
import { printed } from './printed.ts';

/** A plate of plain text, and what stands on it. */
type Case = { name: string; plate: string[]; values: Record<string, unknown> };

const CASES: readonly Case[] = [
  {
    name: 'three phases, boxes with the label above the value',
    plate: [
      'Type             | Serial No.      | IE code',
      '  VK3 132S-4     |     249704      |    IE3',
      'V  Δ/Y           | A               | Hz',
      '   400/690       |   10.8/6.27     |   50',
      'kW               | r/min           | cos φ',
      '    5.5          |    1440         |  0.82',
      'Eff. %   | IP    | Ins. cl.  | Duty',
      '   89.5  |   55  |    F      |   S1',
      'Frame    | kg     | Year    |',
      '   132S  |  52    |  2016   | IEC 60034-1',
    ],
    values: {
      ratedPower_W: 5500,
      voltage_V: [400, 690],
      current_A: [10.8, 6.27],
      frequency_Hz: 50,
      speed_rpm: 1440,
      powerFactor: 0.82,
      efficiency: 0.895,
      efficiencyClass: 'IE3',
      insulationClass: 'F',
      ipRating: 'IP55',
      duty: 'S1',
      frameSize: '132S',
      serialNumber: '249704',
      year: 2016,
      mass_kg: 52,
    },
  },
  {
    name: 'one phase, values with units and no labels',
    plate: [
      'Vendrik                    EK 71-2',
      '                        No. 194657',
      '1~ Mot.   230 V    50 Hz    3,78 A',
      '0,55 kW    2810 min-1   cosφ 0,93',
      'C 16 µF             400 V~',
      'IP54    Isol. Kl. F   S1     2009',
    ],
    values: {
      phases: 1,
      ratedPower_W: 550,
      voltage_V: [230],
      current_A: [3.78],
      frequency_Hz: 50,
      speed_rpm: 2810,
      powerFactor: 0.93,
      capacitor_uF: 16,
      capacitorVoltage_V: 400,
      insulationClass: 'F',
      ipRating: 'IP54',
      duty: 'S1',
      serialNumber: '194657',
      year: 2009,
    },
  },
  {
    name: 'an American plate: labels left, values right, units nowhere',
    plate: [
      'MODEL      KB-2054             PH          3',
      'HP         3                   HZ          60',
      'VOLTS      208-230/460         S.F.        1.15',
      'F.L.A.     8.76-7.92/3.96      CODE        J',
      'RPM        1720                DES.        B',
      'FRAME      182T                INS. CL.    F',
      'SER. NO.   E637165             DUTY        CONT',
      'ENCL.      TEFC   AMB 40 C     NEMA NOM. EFF.   87',
    ],
    values: {
      ratedPower_W: expect.closeTo(3 * 745.7, 0),
      phases: 3,
      voltage_V: [208, 230, 460],
      current_A: [8.76, 7.92, 3.96],
      frequency_Hz: 60,
      speed_rpm: 1720,
      serviceFactor: 1.15,
      codeLetter: 'J',
      designLetter: 'B',
      frameSize: '182T',
      insulationClass: 'F',
      duty: 'CONT',
      ambient_C: 40,
      efficiency: 0.87,
      serialNumber: 'E637165',
    },
  },
  {
    name: 'a blower: label, value and unit in three columns',
    plate: [
      'Fan type         QD-400/28',
      'Serial no.       914331',
      'Volume flow      4400     m3/h',
      'Total pressure   1510     Pa',
      'Fan speed        2900     min-1',
      'Motor power      4        kW',
      'Impeller dia.    400      mm',
      'Air temp. max    60       °C',
      'Weight           86       kg',
      'Year             2012',
    ],
    values: {
      serialNumber: '914331',
      flow_m3_s: expect.closeTo(4400 / 3600, 5),
      pressure_Pa: 1510,
      speed_rpm: 2900,
      ratedPower_W: 4000,
      wheelDiameter_m: 0.4,
      airTemperature_C: 60,
      mass_kg: 86,
      year: 2012,
    },
  },
];

describe('a plate with two rating rows', () => {
  const reading = readPlate(
    printed([
      'Ostrevald            3~ MOTOR',
      'Nr. 496333           IP55',
      'V          Hz     kW     min-1    A        cosφ',
      '230/400    50     1,1    1405     4,92/2,85    0,75',
      '440        60     1,3    1690     2,91     0,79',
    ]),
  );

  test('gives the list of what differs', () => {
    expect(reading.fields.speed_rpm!.value).toEqual([1405, 1690]);
    expect(reading.fields.voltage_V!.value).toEqual([230, 400, 440]);
    expect(reading.fields.frequency_Hz!.value).toEqual([50, 60]);
  });

  test('and the rows one by one', () => {
    expect(reading.ratings).toEqual([
      {
        voltage_V: [230, 400],
        frequency_Hz: 50,
        ratedPower_W: 1100,
        speed_rpm: 1405,
        current_A: [4.92, 2.85],
        powerFactor: 0.75,
      },
      { voltage_V: 440, frequency_Hz: 60, ratedPower_W: 1300, speed_rpm: 1690, current_A: 2.91, powerFactor: 0.79 },
    ]);
  });
});

describe('warnings', () => {
  const names = (plate: string[]) => readPlate(printed(plate)).warnings.map(({ code }) => code);

  test('watts that do not fit volts and amps are named, and asked about', () => {
    const plate = ['3~ Mot.   400/690 V   32.2/18.7 A', '11 kW    2900 min-1   50 Hz', 'cosφ 0.89    Eff. 89.8 %'];
    const { fields } = readPlate(printed(plate));
    expect(names(plate)).toEqual(['plate-contradicts-itself']);
    expect(fields.current_A!.value).toEqual([32.2, 18.7]);
    expect(fields.current_A!.needsReview).toBe(true);
  });

  test('an air flow and a pressure on one plate are asked about', () => {
    expect(names(['Volume flow   4400   m3/h', 'Total pressure   1510   Pa', 'Motor power   4   kW'])).toEqual([
      'largest-values',
    ]);
  });
});

test('words that mean nothing give nothing', () => {
  expect(readPlate(printed(['IEC 60034-1   6205-2Z', 'MADE IN NOWHERE', 'U1   V1   W1'])).fields).toEqual({});
});

test('watts of what turns faster than the mains lets it are taken from the socket', () => {
  expect(
    readPlate(printed(['230 V~   50/60 Hz', '1200 W   5.43 A', '28600 RPM   Vac. max 22.5 kPa'])).ratedPowerMeaning,
  ).toBe('input');
});

describe('a plate that was read without a fault', () => {
  test.each(CASES)('$name', ({ plate, values }) => {
    const { fields } = readPlate(printed(plate));
    expect(Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, field.value]))).toEqual(values);
  });
});
