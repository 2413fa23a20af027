import type { VotedGlyph, Writing } from '../../src/writing/written.ts';
import { wordAt, written } from '../unit/plate/printed.ts';

/** What a plate is made of: a label, the value as printed, its unit, and the field it makes. */
export type PlateItem = { label: string; value: string; unit: string; field: string; truth: unknown };
export type Chance = { next(): number; pick<T>(list: readonly T[]): T };

const LABELS: Readonly<Record<string, readonly string[]>> = {
  ratedPower_W: ['Power', 'Leistung', 'Potenza', 'Puissance', 'Potencia', 'Moc'],
  voltage_V: ['Volts', 'Spannung', 'Tensione', 'Tension', 'Voltaje', 'Napiecie'],
  current_A: ['Amps', 'Strom', 'Corrente', 'Courant', 'Corriente', 'Prad'],
  frequency_Hz: ['Frequency', 'Frequenz', 'Frequenza', 'Frequence', 'Frecuencia', 'Czestotliwosc'],
  speed_rpm: ['Speed', 'Drehzahl', 'Giri', 'Vitesse', 'Velocidad', 'Obroty'],
  powerFactor: ['cosφ', 'cosφ', 'cosφ', 'cosφ', 'cosφ', 'cosφ'],
  insulationClass: ['Ins. cl.', 'Isol. Kl.', 'Cl. isol.', 'Cl. isol.', 'Cl. aisl.', 'Kl. izol.'],
  year: ['Year', 'Baujahr', 'Anno', 'Annee', 'Ano', 'Rok'],
  mass_kg: ['Weight', 'Gewicht', 'Peso', 'Poids', 'Peso', 'Masa'],
  serialNumber: ['Serial No.', 'Masch. Nr.', 'Matricola', 'No. de serie', 'N. de serie', 'Nr fabr.'],
};
const SIZES_kW = [0.37, 0.55, 0.75, 1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15];
const POINT = [',', '.'];

/** A three-phase motor whose values go together: P = √3·U·I·cos φ·η, two currents of two voltages. */
export function randomItems(chance: Chance): PlateItem[] {
  const tongue = Math.floor(chance.next() * 6);
  const point = chance.pick(POINT);
  const text = (value: number) => String(value).replace('.', point);
  const power_kW = chance.pick(SIZES_kW);
  const powerFactor = Number((0.72 + 0.16 * chance.next()).toFixed(2));
  const efficiency = 0.68 + 0.06 * Math.log(power_kW / 0.3);
  const low = chance.pick([220, 230, 400]);
  const high = { 220: 380, 230: 400, 400: 690 }[low]!;
  const amps = (volts: number) =>
    Number(((power_kW * 1000) / (Math.sqrt(3) * volts * powerFactor * efficiency)).toPrecision(3));
  const poles = chance.pick([2, 4, 6]);
  const speed = Math.round((6000 / poles) * (0.93 + 0.05 * chance.next()));
  const year = 1960 + Math.floor(64 * chance.next());
  const mass = Math.round(15 * power_kW ** 0.75 * (0.8 + 0.4 * chance.next())) + 2;
  const serial = String(100_000 + Math.floor(899_999 * chance.next()));
  const label = (field: string) => LABELS[field]![tongue]!;
  return [
    { field: 'ratedPower_W', label: label('ratedPower_W'), value: text(power_kW), unit: 'kW', truth: power_kW * 1000 },
    { field: 'voltage_V', label: label('voltage_V'), value: `${low}/${high}`, unit: 'V', truth: [low, high] },
    {
      field: 'current_A',
      label: label('current_A'),
      value: `${text(amps(low))}/${text(amps(high))}`,
      unit: 'A',
      truth: [amps(low), amps(high)],
    },
    { field: 'frequency_Hz', label: label('frequency_Hz'), value: '50', unit: 'Hz', truth: 50 },
    { field: 'speed_rpm', label: label('speed_rpm'), value: String(speed), unit: 'min-1', truth: speed },
    { field: 'powerFactor', label: label('powerFactor'), value: text(powerFactor), unit: '', truth: powerFactor },
    {
      field: 'insulationClass',
      label: label('insulationClass'),
      value: chance.pick(['B', 'F', 'H']),
      unit: '',
      truth: null,
    },
    { field: 'year', label: label('year'), value: String(year), unit: '', truth: year },
    { field: 'mass_kg', label: label('mass_kg'), value: String(mass), unit: 'kg', truth: mass },
    { field: 'serialNumber', label: label('serialNumber'), value: serial, unit: '', truth: serial },
  ].map((item) => ({ ...item, truth: item.truth ?? item.value }));
}

/** Where label, value and unit of the nth item stand. */
type Layout = (n: number, item: PlateItem) => { label: readonly [number, number]; value: readonly [number, number] };
const LAYOUTS: readonly Layout[] = [
  // label left, value right, one column and two
  (n) => ({ label: [20, 20 + 46 * n], value: [330, 20 + 46 * n] }),
  (n) => ({
    label: [20 + 700 * (n % 2), 20 + 46 * Math.floor(n / 2)],
    value: [330 + 700 * (n % 2), 20 + 46 * Math.floor(n / 2)],
  }),
  // label above its value, three a row
  (n) => ({
    label: [20 + 420 * (n % 3), 20 + 110 * Math.floor(n / 3)],
    value: [60 + 420 * (n % 3), 62 + 110 * Math.floor(n / 3)],
  }),
];

/** Words of a plate in one of several layouts; `slip` changes how a character was read. */
export function printItems(
  items: readonly PlateItem[],
  chance: Chance,
  slip: (character: string) => VotedGlyph['others'] | null = () => null,
): Writing {
  const layout = chance.pick(LAYOUTS);
  let line = 0;
  const words = items.flatMap((item, n) => {
    const place = layout(n, item);
    const put = (text: string, x: number, y: number) => {
      line++;
      let at = x;
      return text.split(' ').map((word) => {
        const made = wordAt(word, at, y, line, slip);
        at = made.x1 + 8;
        return made;
      });
    };
    return [
      ...put(item.label, ...place.label),
      ...put(item.unit ? `${item.value} ${item.unit}` : item.value, ...place.value),
    ];
  });
  return written(words);
}
