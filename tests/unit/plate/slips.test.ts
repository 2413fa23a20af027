import { describe, expect, test } from 'vitest';
import { readPlate } from '../../../src/plate/index.ts';
import { printed } from './printed.ts';

/** What readers of words are known to make of signs, and what was printed; figures of the plates are invented. */
const SLIPS: readonly { what: string; plate: string[]; values: Record<string, unknown> }[] = [
  {
    what: 'letters inside a serial number are no unit',
    plate: ['Typ   GK6 160L', 'Nr.   JH5467W44', 'Frequenz   50   Hz', 'Leistung   18,5   kW'],
    values: { serialNumber: 'JH5467W44', ratedPower_W: 18500 },
  },
  {
    what: 'a unit that begins with a figure is one unit',
    plate: ['P 2.2 kW   50 Hz', '2840 1/min   350 mm'],
    values: { speed_rpm: 2840, ratedPower_W: 2200 },
  },
  {
    what: 'a delta read as a 4',
    plate: ['Spannung   2304/400Y   V', 'Strom   59,8/34,4   A', 'Leistung   18,5   kW'],
    values: { voltage_V: [230, 400] },
  },
  {
    what: 'the division sign of a range read as a colon',
    plate: ['220:240 V ~   9.13 A   50 Hz', '1.5 kW   1420 min-1'],
    values: { voltage_V: [220, 240] },
  },
  {
    what: 'a list whose second number begins with its point',
    plate: ['A   1.18/.59   HZ   60', 'VOLTS   220/440   HP   .25'],
    values: { current_A: [1.18, 0.59], ratedPower_W: 0.25 * 745.6998715822702 },
  },
  {
    what: 'a mixed fraction that lost its blank',
    plate: ['71/2 hp   60 Hz   1750 RPM', 'VOLTS 230/460   AMPS 20/10'],
    values: { ratedPower_W: 7.5 * 745.6998715822702 },
  },
  {
    what: 'the symbol I read as the first figure of a current',
    plate: ['2.2 kW   50 Hz   220/380 V', '2840 1/min   18.27/4.78 A'],
    values: { current_A: [8.27, 4.78] },
  },
  {
    what: 'the sign Ø read as a nought',
    plate: ['Pressao Pa   2480   Vazao m3/h   2130', 'Rotor 0 mm   500   Ano   1998'],
    values: { wheelDiameter_m: 0.5, pressure_Pa: 2480, year: 1998 },
  },
  {
    what: 'a label of whatever size with its unit above the value',
    plate: ['Pression Pa       | Puissance W   | Masse kg', '   262            |    250        |   30'],
    values: { pressure_Pa: 262, ratedPower_W: 250, mass_kg: 30 },
  },
  {
    what: 'one power in kilowatts and in horsepower',
    plate: ['3.0 kW   4 HP   400 V   6.43 A   50 Hz', '1435 min-1   cos φ 0.83'],
    values: { ratedPower_W: 3000 },
  },
  {
    what: 'columns of kilowatts and horsepower over two ratings',
    plate: [
      'HP   | kW     | min-1   | V       | A      | Hz  | cos φ',
      '20   | 15.0   | 2920    | 415     | 28.3   | 50  | 0.85',
      '23   | 17.0   | 3520    | 460     | 27.9   | 60  | 0.89',
    ],
    values: { ratedPower_W: [15000, 17000] },
  },
  {
    what: 'a delta at the end of a range read as a 4',
    plate: [
      'kW      | min-1   | V          | A      | Hz  | cos φ',
      '0,18    | 890     | 220-2404   | 1,06   | 50  | 0,64',
      '0,18    | 890     | 380-415Y   | 0,61   | 50  | 0,64',
    ],
    values: { voltage_V: [220, 240, 380, 415], current_A: [1.06, 0.61] },
  },
  {
    what: 'efficiencies of two ratings beside their label',
    plate: [
      'Hz        50           60',
      'V         230/400      440',
      'kW        1,1          1,3',
      't/min     2840         3375',
      'cos φ     0,83         0,78',
      'A         4,32/2,48    2,74',
      'n %       77,0         79,7',
    ],
    values: { efficiency: [0.77, 0.797], powerFactor: [0.83, 0.78], speed_rpm: [2840, 3375] },
  },
  {
    what: 'Cyrillic units as a reader of Latin letters gives them back',
    plate: ['0,55 kBT   1365 06/MuH   50 TIy', '110B   7,49 A   14 MKD'],
    values: { ratedPower_W: 550, speed_rpm: 1365, frequency_Hz: 50, voltage_V: [110], capacitor_uF: 14 },
  },
];

describe('slips of reading', () => {
  test.each(SLIPS)('$what', ({ plate, values }) => {
    const { fields } = readPlate(printed(plate));
    for (const [name, value] of Object.entries(values))
      expect(fields[name as keyof typeof fields]?.value, name).toEqual(
        typeof value === 'number' ? expect.closeTo(value, 4) : value,
      );
  });

  test('a speed whose unit nobody could read is told by its look, to be checked', () => {
    const { fields } = readPlate(printed(['0.75 kW   3.18 A   50 Hz', 'EBX 1395 ¥/8']));
    expect(fields.speed_rpm).toMatchObject({ value: 1395, needsReview: true });
  });

  test("a number that is no motor's speed is none", () => {
    expect(readPlate(printed(['0.75 kW   3.18 A   50 Hz', 'EBX 2250 ¥/8'])).fields.speed_rpm).toBeUndefined();
  });

  test('a number beside letters that mean nothing is no voltage', () => {
    const { fields } = readPlate(printed(['A 55.2   Hz 60   r/min 1770', 'XJ 200LA   1993   30 kW']));
    expect(fields.voltage_V).toBeUndefined();
  });

  test('a number whose decimals stand apart is for somebody to look at', () => {
    const { fields } = readPlate(printed(['230 V   50 Hz   6, 16 A', '1.4 kW   1420 min-1']));
    expect(fields.current_A?.needsReview ?? true).toBe(true);
  });

  test('figures that go on behind a sign nobody understands are for somebody to look at', () => {
    const { fields } = readPlate(printed(['220§240 V   9.13 A   50 Hz', '1.5 kW   1420 min-1']));
    expect(fields.voltage_V?.needsReview ?? true).toBe(true);
  });
});

describe('a power that may have lost its point', () => {
  const review = (plate: string[]) => readPlate(printed(plate)).fields.ratedPower_W?.needsReview;

  test('is asked about where nothing on the plate tells', () => {
    expect(review(['22 kW   2940 min-1   2016', 'Typ   VR 400'])).toBe(true);
  });

  test('is stood by where volts and amps bear it out, or where no size has a point there', () => {
    expect(review(['22 kW   2940 min-1   50 Hz', '400 V   40.5 A   cos φ 0.86'])).toBe(false);
    expect(review(['18,5 kW   2940 min-1   2016', 'Typ   VR 400'])).toBe(false);
  });
});
