import type { FieldName } from '../reading.ts';

/**
 * One unit: what may be measured in it on a plate, what brings a number to the field's own unit, and its spellings (blanks
 * do not count). `other`: a unit of nothing we want, so that its number is not taken for something else.
 */
export type PlateUnit = {
  readonly fields: readonly (FieldName | 'other')[];
  readonly factor: number;
  readonly offset: number;
  readonly spellings: readonly string[];
};

const unit = (fields: string, factor: number, spellings: string, offset = 0): PlateUnit => ({
  fields: fields.split(' ') as (FieldName | 'other')[],
  factor,
  offset,
  spellings: spellings.split(' | ').map((spelling) => spelling.replaceAll(' ', '')),
});

/** Standard gravity [m/s²], CGPM 1901; foot and inch [m], 1959; pound [kg]. */
const GRAVITY = 9.80665;
const FOOT = 0.3048;
const INCH = 0.0254;
const POUND = 0.45359237;
/** Conventional inch of water [Pa]. Source: NIST SP 811, B.8. */
const INCH_WATER = 249.08891;
const TEMPERATURE = 'ambient_C airTemperature_C';

/** Units as plates spell them. Source of the factors: NIST SP 811 appendix B. */
export const PLATE_UNITS: readonly PlateUnit[] = [
  unit('ratedPower_W', 1000, 'kW | kw. | kW- | KV | кВт'),
  unit('ratedPower_W', 1, 'W | w | Ww | Watt | Watts | watt. | Вт'),
  unit('ratedPower_W', 745.6998715822702, 'HP | H.P. | BHP | horsepower | Hp'),
  unit('ratedPower_W', 735.49875, 'PS | CV | ch | KM | BG | лс | л.с. | pk | hk | hv | LE'),
  unit('other', 1, 'kVA | VA | kvar | dB(A) | dBA | dB | Nm | kgm² | mH | ohm | kA | mA | bar(g)'),
  unit('voltage_V capacitorVoltage_V', 1, 'V | v | Vv | Volt | Volts | Volt. | VAC | V AC | V~ | V ~ | Vac | В'),
  unit(
    'voltage_V',
    1,
    'V Δ/Y | V Y/Δ | V D/Y | V Y/D | VΔ | VY | V D | Δ/Y V | Δ/Y | Y/Δ | D/Y | A/Y | AIY | AlY | AY | Y/YY V | V Δ | V Y',
  ),
  unit('capacitorVoltage_V', 1, 'VDB | V DB | Vdb'),
  unit('current_A', 1, 'A | I A | I (A) | Amp | Amps | Amp. | Ampere | Amperes | Amper | А | Ampères'),
  unit('current_A', 1, 'A Δ/Y | A Y/Δ | A D/Y | A A/Y'),
  unit('frequency_Hz', 1, 'Hz | Hertz | c/s | cycles | cycle | cy. | Per./s | Per/s | Гц | TIy | TIu | Tu | cps'),
  unit(
    'speed_rpm',
    1,
    'min-1 | min⁻¹ | min | /min | 1/min | rpm | r.p.m. | r/min | U/min | t/min | tr/min | g/min | giri/min | giri/1',
  ),
  unit(
    'speed_rpm',
    1,
    'rev/min | obr/min | ob/min | d/dak | dev/dk | d/d | об/мин | ot/min | omw/min | omdr/min | v/min | varv/min',
  ),
  unit(
    'speed_rpm',
    1,
    'RPM | U.p.M. | UpM | r/m | tpm | rot/min | ford/min | 1/perc | rev./min. | tours/min | r.p.m | n/min',
  ),
  unit('efficiency', 0.01, '% | pct | percent'),
  unit('capacitor_uF startCapacitor_uF', 1, 'µF | uF | pF | MFD | mF | µFd | MF | мкФ | MKD | MK® | mfd.'),
  unit('mass_kg', 1, 'kg | kgs | Kg. | кг | kilo'),
  unit('mass_kg', POUND, 'lb | lbs | lbs. | pounds'),
  unit(TEMPERATURE, 1, '°C | ° C | deg C | degC | C | °c | ºC | Celsius'),
  unit(TEMPERATURE, 5 / 9, '°F | deg F | degF', -32),
  unit(
    'flow_m3_s',
    1 / 3600,
    'm³/h | m3/h | m³/hr | cbm/h | m³h | mc/h | m3/hr | m³/Std | m³/u | м³/ч | m³/sa | m³/saat | CMH | cmh | m³/heure | m³/hod | m³/t | m³/godz',
  ),
  unit('flow_m3_s', 1 / 60, 'm³/min | m3/min | CMM | m³/mn | mc/min | cbm/min | m³/dk | м³/мин | m³/1′'),
  unit('flow_m3_s', 1, 'm³/s | m3/s | m³/sec | mc/s | m³/sn | м³/с | m³/sek'),
  unit('flow_m3_s', 1e-3, 'l/s | L/s | l/sec | dm³/s | ltr/s | lt/s | l/sek'),
  unit('flow_m3_s', 1e-3 / 60, 'l/min | L/min | lpm | LPM | ltr/min | lt/min | l/mn | l/dk'),
  unit('flow_m3_s', FOOT ** 3 / 60, 'CFM | c.f.m. | ft³/min | cu.ft/min | SCFM | ACFM | cfm. | cuft/min'),
  unit('pressure_Pa', 1, 'Pa | Pascal | N/m² | Па'),
  unit('pressure_Pa', 1000, 'kPa | kN/m² | кПа'),
  unit('pressure_Pa', 10, 'daPa | dPa'),
  unit('pressure_Pa', 100, 'mbar | hPa | mb | millibar | мбар'),
  unit('pressure_Pa', 1e5, 'bar'),
  unit(
    'pressure_Pa',
    GRAVITY,
    'mm WG | mmWG | mm H2O | mmH₂O | mm WS | mmWS | mm WC | mmWC | mmAq | mm CE | mm c.a. | mmCA | mmca | mm w.g. | mm SW | mmSS | mm W.S. | kp/m² | kgf/m² | kg/m² | mm вод.ст. | mm cda | mm H.O | mm d.a. | mmda | mm eau | mm V.S.',
  ),
  unit('pressure_Pa', 133.322387415, 'mm Hg | mmHg | Torr | mm QS'),
  unit(
    'pressure_Pa',
    INCH_WATER,
    'in WG | inWG | in H2O | inH₂O | in WC | inWC | in. wg | "WG | "WC | "H2O | in. H2O | in w.g. | inch WG | inches WG | in.wc | in. W.G. | ins WG | iwg | I.W.G. | in water | inches water',
  ),
  unit('pressure_Pa', 3386.389, 'in Hg | inHg | "Hg | in.Hg'),
  unit('pressure_Pa', 6894.757, 'psi | lb/in² | PSIG'),
  unit('wheelDiameter_m other', 1e-3, 'mm | m/m | мм'),
  unit('wheelDiameter_m other', 1e-2, 'cm'),
  unit('wheelDiameter_m other', INCH, 'in | inch | inches | in. | "'),
  unit('other', 1, 'm | h | g | s | hrs | hours | kWh | km | cm³ | m/s | W/m² | kg/m³'),
];
