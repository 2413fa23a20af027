import type { Quantity } from './quantities.ts';

/**
 * One unit of one quantity. value in the base unit = (typed + offset) × factor.
 * `aliases` are other spellings of exactly this unit. `spoken` are words people use for it that could also mean something
 * else: they are taken, with a warning. `exactCase`: spellings whose capitals matter. `twin` is the unit shown beside it.
 */
export type Unit = {
  unit: string;
  quantity: Quantity;
  factor: number;
  offset: number;
  decimals: number;
  twin: string | null;
  aliases: readonly string[];
  spoken: readonly string[];
  exactCase: boolean;
};

type Extra = { offset?: number; twin?: string; spoken?: readonly string[]; exactCase?: boolean };

const unit = (
  quantity: Quantity,
  name: string,
  factor: number,
  decimals: number,
  aliases: string,
  extra: Extra = {},
): Unit => ({
  unit: name,
  quantity,
  factor,
  offset: extra.offset ?? 0,
  decimals,
  twin: extra.twin ?? null,
  aliases: aliases === '' ? [] : aliases.split(' | '),
  spoken: extra.spoken ?? [],
  exactCase: extra.exactCase ?? false,
});

/** Exact by definition: international foot and pound (1959), standard gravity 9.80665 m/s² (CGPM 1901). */
const FOOT = 0.3048;
const INCH = 0.0254;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
/** Conventional water of 1000 kg/m³ (ISO 80000-4 annex) and mercury of 13,595.1 kg/m³. */
const MM_WATER = GRAVITY;
const MM_MERCURY = 13.5951 * GRAVITY;
/** Conventional inch of water, 4 °C (NIST SP 811, B.8); 0.0004 % below 25.4 × 9.80665. */
const INCH_WATER = 249.08891;
const POUND_FORCE = POUND * GRAVITY;
/** Mechanical horsepower, 550 ft·lbf/s. */
const HORSEPOWER = 550 * FOOT * POUND_FORCE;

/** Every unit the program reads and writes. Source: NIST SP 811 appendix B; definitions above. */
export const UNITS: readonly Unit[] = [
  unit(
    'length',
    'mm',
    1e-3,
    0,
    'millimetre | millimetres | millimeter | millimeters | mms | ملی میٹر | ملیمیٹر | मिमी',
    { twin: 'in' },
  ),
  unit('length', 'cm', 1e-2, 1, 'centimetre | centimetres | centimeter | centimeters | cms | سینٹی میٹر | سم | सेमी', {
    twin: 'in',
  }),
  unit('length', 'm', 1, 2, 'metre | metres | meter | meters | mtr | mtrs | میٹر | मीटर', { twin: 'ft' }),
  unit('length', 'in', INCH, 2, "inch | inches | \" | '' | انچ | इंच", { twin: 'mm' }),
  unit('length', 'ft', FOOT, 2, "foot | feet | ' | فٹ | फुट | फीट", { twin: 'm' }),
  unit('length', 'km', 1000, 2, 'kilometre | kilometres | kilometer | kilometers | کلومیٹر'),
  unit('length', 'soot', INCH / 8, 1, 'sut | sooter | suter | sutar | سوت', { twin: 'mm' }),
  unit('length', 'µm', 1e-6, 0, 'um | micron | microns | micrometre | micrometer', { twin: 'mm' }),
  unit('length', 'thou', INCH / 1000, 0, 'mil | mils', { twin: 'mm' }),

  unit(
    'area',
    'm²',
    1,
    4,
    'm2 | sqm | sq m | square metre | square metres | square meter | square meters | مربع میٹر',
    { twin: 'ft²' },
  ),
  unit('area', 'cm²', 1e-4, 1, 'cm2 | sqcm | square centimetre | square centimetres | square centimeters', {
    twin: 'in²',
  }),
  unit('area', 'mm²', 1e-6, 0, 'mm2 | sqmm | square millimetre | square millimetres | square millimeters', {
    twin: 'in²',
  }),
  unit('area', 'in²', INCH ** 2, 2, 'in2 | sqin | square inch | square inches', { twin: 'cm²' }),
  unit('area', 'ft²', FOOT ** 2, 3, 'ft2 | sqft | square foot | square feet | مربع فٹ', { twin: 'm²' }),

  unit('volume', 'm³', 1, 3, 'm3 | cbm | cum | cubic metre | cubic metres | cubic meter | cubic meters', {
    twin: 'ft³',
  }),
  unit('volume', 'L', 1e-3, 0, 'l | litre | litres | liter | liters | ltr | ltrs | dm3 | لیٹر', { twin: 'ft³' }),
  unit('volume', 'mL', 1e-6, 0, 'ml | cc | cm3 | millilitre | millilitres'),
  unit('volume', 'ft³', FOOT ** 3, 2, 'ft3 | cuft | cf | cubic foot | cubic feet', { twin: 'm³' }),
  unit('volume', 'US gal', 231 * INCH ** 3, 1, 'usgal | us gallon | us gallons', {
    twin: 'L',
    spoken: ['gal', 'gallon', 'gallons'],
  }),
  unit(
    'volume',
    'UK gal',
    4.54609e-3,
    1,
    'ukgal | imp gal | imperial gallon | imperial gallons | uk gallon | uk gallons',
    { twin: 'L' },
  ),

  unit(
    'flow',
    'm³/h',
    1 / 3600,
    0,
    'm3/h | m3/hr | m3/hour | m3h-1 | m3h | cmh | cbm/h | cubic metres per hour | cubic meters per hour',
    { twin: 'CFM' },
  ),
  unit(
    'flow',
    'CFM',
    FOOT ** 3 / 60,
    0,
    'ft3/min | cuft/min | cu ft/min | acfm | icfm | cubic feet per minute | cubic feet a minute',
    { twin: 'm³/h' },
  ),
  unit(
    'flow',
    'm³/min',
    1 / 60,
    1,
    'm3/min | m3/mn | m3min-1 | m3/minute | cmm | cubic metres per minute | cubic meters per minute',
    { twin: 'CFM' },
  ),
  unit('flow', 'L/s', 1e-3, 0, 'l/s | l/sec | ls-1 | lps | ltr/s | litres per second | liters per second', {
    twin: 'CFM',
  }),
  unit('flow', 'm³/s', 1, 3, 'm3/s | m3/sec | m3s-1 | m3s | cubic metres per second | cubic meters per second', {
    twin: 'CFM',
  }),
  unit('flow', 'L/min', 1e-3 / 60, 0, 'l/min | lpm | ltr/min | litres per minute | liters per minute', { twin: 'CFM' }),
  unit('flow', 'ft³/s', FOOT ** 3, 2, 'ft3/s | cfs | cubic feet per second', { twin: 'm³/h' }),
  unit('flow', 'ft³/h', FOOT ** 3 / 3600, 0, 'ft3/h | ft3/hr | cfh | cubic feet per hour', { twin: 'm³/h' }),

  unit('pressure', 'Pa', 1, 0, 'n/m2 | pascal | pascals | پاسکل', { twin: 'mm water' }),
  unit(
    'pressure',
    'mm water',
    MM_WATER,
    0,
    'mm wg | mmwg | mm h2o | mmh2o | mm ws | mmws | mm ss | mmss | mm wc | mmwc | mm aq | mmaq | mm ce | mm of water | mm of h2o | mm water gauge | mm water column | mm pani | mm vs | kgf/m2 | kg/m2 | kp/m2 | ملی میٹر پانی | मिमी पानी',
    { twin: 'Pa', spoken: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'ملی میٹر'] },
  ),
  unit(
    'pressure',
    'in water',
    INCH_WATER,
    2,
    'in wg | in h2o | in wc | in ws | in aq | inch wg | inch wc | inch h2o | inches wg | inches wc | inches h2o | inch water | inches water | inch of water | inches of water | in of water | iwg | iwc | "wg | "wc | "h2o | "water | انچ پانی',
    { twin: 'Pa', spoken: ['in', 'inch', 'inches', '"', 'انچ'] },
  ),
  unit('pressure', 'mbar', 100, 1, 'mb | millibar | millibars', { twin: 'mm water' }),
  unit('pressure', 'kPa', 1000, 2, 'kn/m2 | kilopascal | kilopascals', { twin: 'mm water' }),
  unit('pressure', 'hPa', 100, 1, 'hectopascal | hectopascals', { twin: 'mm water' }),
  unit('pressure', 'daPa', 10, 0, 'dapa | decapascal', { twin: 'mm water' }),
  unit('pressure', 'bar', 1e5, 3, 'bars', { twin: 'mm water' }),
  unit('pressure', 'MPa', 1e6, 3, '', { twin: 'kPa', exactCase: true }),
  unit('pressure', 'cm water', 10 * MM_WATER, 1, 'cm wg | cm h2o | cm ws | cm wc | cm of water | cm aq', {
    twin: 'Pa',
    spoken: ['cm'],
  }),
  unit('pressure', 'm water', 1000 * MM_WATER, 3, 'm wg | m h2o | m ws | m wc | m of water | mwc', { twin: 'Pa' }),
  unit('pressure', 'mm Hg', MM_MERCURY, 1, 'torr | mm mercury | mm of mercury | mm qs', { twin: 'kPa' }),
  unit(
    'pressure',
    'in Hg',
    25.4 * MM_MERCURY,
    2,
    'inch hg | inches hg | "hg | in mercury | inches of mercury | inch of mercury',
    { twin: 'kPa' },
  ),
  unit('pressure', 'psi', POUND_FORCE / INCH ** 2, 2, 'lb/in2 | lbf/in2 | psig | lb/sq in | pounds per square inch', {
    twin: 'kPa',
  }),
  unit('pressure', 'psf', POUND_FORCE / FOOT ** 2, 1, 'lb/ft2 | lbf/ft2', { twin: 'Pa' }),
  unit('pressure', 'oz/in²', POUND_FORCE / 16 / INCH ** 2, 1, 'oz/in2 | osi | oz/sq in | ozf/in2', { twin: 'Pa' }),
  unit('pressure', 'kgf/cm²', GRAVITY * 1e4, 3, 'kgf/cm2 | kg/cm2 | kp/cm2 | ksc', { twin: 'kPa' }),
  unit('pressure', 'atm', 101_325, 3, 'atmosphere | atmospheres', { twin: 'kPa' }),

  unit('power', 'W', 1, 0, 'watt | watts | واٹ | वाट', { twin: 'HP' }),
  unit('power', 'kW', 1000, 2, 'kilowatt | kilowatts | kws | کلو واٹ | کلوواٹ | किलोवाट', { twin: 'HP' }),
  unit(
    'power',
    'HP',
    HORSEPOWER,
    2,
    'hp | bhp | h p | horsepower | horse power | horse | shp | ہارس پاور | हॉर्सपावर | एचपी',
    { twin: 'kW' },
  ),
  unit('power', 'PS', 75 * GRAVITY, 2, 'cv | ch | pk | metric hp | metric horsepower | hp metric', { twin: 'kW' }),
  unit('power', 'Btu/h', 1055.05585262 / 3600, 0, 'btu/hr | btuh', { twin: 'W' }),

  unit(
    'velocity',
    'm/s',
    1,
    1,
    'ms-1 | m/sec | mps | metres per second | meters per second | metre per second | meter per second',
    { twin: 'ft/min' },
  ),
  unit('velocity', 'ft/min', FOOT / 60, 0, 'fpm | feet per minute | feet a minute | lfpm', { twin: 'm/s' }),
  unit('velocity', 'ft/s', FOOT, 1, 'fps | feet per second', { twin: 'm/s' }),
  unit('velocity', 'km/h', 1 / 3.6, 0, 'kmh | kph | km/hr | kmph | kilometres per hour | kilometers per hour', {
    twin: 'm/s',
  }),
  unit('velocity', 'm/min', 1 / 60, 0, 'm/mn | metres per minute | meters per minute', { twin: 'm/s' }),
  unit('velocity', 'mph', (5280 * FOOT) / 3600, 0, 'mile/h | miles per hour', { twin: 'm/s' }),

  unit(
    'speed',
    'rpm',
    1,
    0,
    'min-1 | 1/min | /min | u/min | r/min | rev/min | t/min | tr/min | r p m | rev per min | revs per minute | revolutions per minute | turns a minute | چکر فی منٹ | چکر',
    {},
  ),
  unit('speed', 'rps', 60, 1, 'rev/s | r/s | 1/s | s-1 | revolutions per second | turns a second', { twin: 'rpm' }),
  unit('speed', 'rad/s', 60 / (2 * Math.PI), 0, 'rads-1', { twin: 'rpm' }),

  unit(
    'temperature',
    '°C',
    1,
    0,
    'c | degc | deg c | celsius | degrees c | degree celsius | degrees celsius | centigrade | ڈگری سینٹی گریڈ',
    {
      twin: '°F',
      spoken: ['°', 'deg', 'degree', 'degrees', 'ڈگری'],
    },
  ),
  unit('temperature', '°F', 5 / 9, 0, 'f | degf | deg f | fahrenheit | degrees f | degrees fahrenheit', {
    offset: -32,
    twin: '°C',
  }),
  unit('temperature', 'K', 1, 0, 'kelvin | degk', { offset: -273.15, twin: '°C', exactCase: true }),

  unit('voltage', 'V', 1, 0, 'volt | volts | v ac | vac | v~ | v dc | vdc | وولٹ | वोल्ट'),
  unit('voltage', 'kV', 1000, 2, 'kilovolt | kilovolts'),
  unit('voltage', 'mV', 1e-3, 0, 'millivolt | millivolts'),
  unit('current', 'A', 1, 1, 'amp | amps | ampere | amperes | ایمپیئر | ایمپئر | एम्पियर'),
  unit('current', 'mA', 1e-3, 0, 'milliamp | milliamps'),
  unit('frequency', 'Hz', 1, 0, 'hertz | cps | c/s | ~ | ہرٹز'),
  unit('frequency', 'kHz', 1000, 2, 'kilohertz'),

  unit('density', 'kg/m³', 1, 3, 'kg/m3 | kgm-3 | g/l | kg per cubic metre | kg per m3', { twin: 'lb/ft³' }),
  unit('density', 'g/cm³', 1000, 4, 'g/cm3 | g/cc | g/ml | kg/l', { twin: 'kg/m³' }),
  unit('density', 'lb/ft³', POUND / FOOT ** 3, 4, 'lb/ft3 | lbs/ft3 | lb/cu ft | pcf', { twin: 'kg/m³' }),

  unit('time', 's', 1, 0, 'sec | secs | second | seconds | سیکنڈ | सेकंड'),
  unit('time', 'ms', 1e-3, 0, 'msec | millisecond | milliseconds'),
  unit('time', 'min', 60, 1, 'mins | minute | minutes | منٹ | मिनट', { twin: 's' }),
  unit('time', 'h', 3600, 1, 'hr | hrs | hour | hours | گھنٹہ | گھنٹے | घंटा | घंटे', { twin: 'min' }),
  unit('time', 'day', 86_400, 1, 'd | days | دن', { twin: 'h' }),

  unit('mass', 'kg', 1, 1, 'kgs | kilo | kilos | kilogram | kilograms | کلو | کلوگرام | किलो', { twin: 'lb' }),
  unit('mass', 'g', 1e-3, 0, 'gram | grams | gm | gms | گرام', { twin: 'kg' }),
  unit('mass', 'lb', POUND, 1, 'lbs | pound | pounds | lbm | پونڈ', { twin: 'kg' }),
  unit('mass', 'oz', POUND / 16, 1, 'ounce | ounces', { twin: 'kg' }),
  unit('mass', 't', 1000, 2, 'tonne | tonnes | metric ton', { twin: 'kg' }),

  unit('mass-flow', 'kg/h', 1, 1, 'kg/hr | kg/hour | kgh | kilos an hour | kg an hour | kg per hour', { twin: 'lb/h' }),
  unit('mass-flow', 'kg/s', 3600, 4, 'kg/sec | kg per second', { twin: 'kg/h' }),
  unit('mass-flow', 'kg/min', 60, 2, 'kg per minute', { twin: 'kg/h' }),
  unit('mass-flow', 'g/s', 3.6, 1, 'g/sec', { twin: 'kg/h' }),
  unit('mass-flow', 'kg/day', 1 / 24, 0, 'kg/d | kg a day | kg per day', { twin: 'kg/h' }),
  unit('mass-flow', 'lb/h', POUND, 1, 'lb/hr | lbs/h | lbs/hr | lb per hour', { twin: 'kg/h' }),

  unit('angle', '°', 1, 0, 'deg | degree | degrees | ڈگری | डिग्री'),
  unit('angle', 'rad', 180 / Math.PI, 3, 'radian | radians', { twin: '°' }),

  unit('fraction', '%', 0.01, 0, 'percent | per cent | pct | فیصد | प्रतिशत'),
  unit('fraction', '1', 1, 2, 'of one | of 1 | fraction'),
  unit('fraction', '‰', 1e-3, 0, 'per mille | permille', { twin: '%' }),

  unit('capacity', 'µF', 1, 1, 'uf | mfd | microfarad | microfarads | مائیکرو فیراڈ'),
  unit('capacity', 'nF', 1e-3, 0, 'nanofarad | nanofarads', { twin: 'µF' }),
];
