import { describe, expect, test } from 'vitest';
import { FACES } from '../../../fixtures/generate/letters/faces.ts';
import { drawPlate, layoutFor, type DrawnPlate } from '../../../fixtures/generate/plate/layout/draw-plate.ts';
import { LAYOUTS } from '../../../fixtures/generate/plate/layout/layouts.ts';
import { inventMachine } from '../../../fixtures/generate/plate/machine/invent.ts';
import { apparent_VA, type Machine } from '../../../fixtures/generate/plate/machine/machine.ts';
import { MATERIALS } from '../../../fixtures/generate/plate/surface/materials.ts';
import { composeCopy, tongueOf } from '../../../fixtures/generate/plate/words/compose.ts';
import type { Copy, Item } from '../../../fixtures/generate/plate/words/item.ts';
import { randomFrom } from '../../../fixtures/generate/random.ts';

const KINDS = ['motor-plate', 'motor-plate', 'blower-plate'] as const;
const machines: Machine[] = Array.from({ length: 500 }, (_, k) => inventMachine(randomFrom(900 + k), KINDS[k % 3]!));
const copies = machines.map((machine, k) => {
  const random = randomFrom(7000 + k);
  return { machine, copy: composeCopy(random, machine, tongueOf(random, machine), k % 9 === 0) };
});
const itemsOf = (copy: Copy): Item[] => [copy.title, ...copy.head, ...copy.rows.flat(), ...copy.rest];

/** What each unit of a plate is in SI; sources: ISO 80000, and for horsepower and pound NIST SP 811. */
const SI: Record<string, number> = {
  W: 1,
  kW: 1000,
  HP: 745.7,
  hp: 745.7,
  PS: 735.5,
  CV: 735.5,
  ch: 735.5,
  KM: 735.5,
  '%': 0.01,
  mm: 0.001,
  kg: 1,
  lb: 0.45359237,
  Pa: 1,
  kPa: 1000,
  mbar: 100,
  daPa: 10,
  'mm WG': 9.80665,
  'mm H2O': 9.80665,
  mmWS: 9.80665,
  'in. WG': 249.089,
  'm³/h': 1 / 3600,
  'm³/min': 1 / 60,
  'm³/s': 1,
  'l/s': 0.001,
  'l/min': 1 / 60000,
  CFM: 0.000471947,
  V: 1,
  A: 1,
  Hz: 1,
  µF: 1,
  C: 1,
  '°C': 1,
};

/** Numbers as a person reads them: a comma is a decimal point unless three digits follow a whole number of thousands. */
function numbersIn(text: string, field: string): number[] {
  const fraction = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(text);
  if (fraction && field === 'ratedPower_W')
    return [Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])];
  const joined = text.replace(/(\d) (\d{3})(?!\d)/g, '$1$2').replace(/(?<=[1-9]),(\d{3})(?![\d])/g, '$1');
  return [...joined.matchAll(/\d*[.,]?\d+/g)].map(([n]) => Number(n.replace(',', '.')));
}

describe('invented machines', () => {
  test('draw the current their power takes, within three percent', () => {
    let checked = 0;
    for (const { phases, ratings, wrong, powerIs } of machines)
      for (const r of ratings)
        for (const { low_V, high_V, current_A } of r.volts) {
          if (!phases || wrong.length || powerIs === 'input' || r.powerFactor === null || r.efficiency === null)
            continue;
          const volts = (low_V + (high_V ?? low_V)) / 2;
          const shaft_W = apparent_VA(phases, volts, current_A) * r.powerFactor * r.efficiency;
          expect(Math.abs(shaft_W / r.power_W - 1)).toBeLessThan(0.03);
          checked++;
        }
    expect(checked).toBeGreaterThan(80);
  });

  test('turn a little slower than their field, and never otherwise', () => {
    for (const { sort, ratings, poles, wrong } of machines) {
      if (!['three-phase', 'single-phase'].includes(sort) || wrong.includes('speed_rpm')) continue;
      for (const { speed_rpm, frequency_Hz } of ratings) {
        const slip = 1 - speed_rpm / ((120 * frequency_Hz) / poles);
        expect(slip).toBeGreaterThan(0.003);
        expect(slip).toBeLessThan(0.14);
      }
    }
  });

  test('give a blower more than its air takes, unless that is wrong on purpose', () => {
    for (const m of machines.filter((one) => one.kind === 'blower-plate')) {
      const air_W = m.flow_m3_s! * m.pressure_Pa!;
      expect([m.ratings[0]!.power_W > air_W, m.wrong.length]).toEqual([
        !m.wrong.includes('ratedPower_W'),
        m.wrong.length,
      ]);
    }
  });

  test('are of every sort, some of them wrong', () => {
    const sorts = new Set(machines.map((m) => m.sort));
    expect(sorts).toEqual(new Set(['three-phase', 'single-phase', 'vacuum', 'direct-current', 'centrifugal', 'axial']));
    expect(new Set(machines.flatMap((m) => m.wrong))).toEqual(new Set(['ratedPower_W', 'current_A', 'speed_rpm']));
  });
});

describe('what is printed', () => {
  test('reads back to the truth', () => {
    const numeric = copies
      .flatMap(({ copy }) => itemsOf(copy))
      .flatMap((i) => Object.entries(i.fields).map(([name, v]) => ({ name, v, said: i.asPrinted[name]! })));
    const misread: string[] = [];
    for (const { name, v, said } of numeric) {
      if (typeof v === 'string' || name === 'phases') continue;
      const unit = Object.keys(SI)
        .filter((u) => said.endsWith(` ${u}`))
        .toSorted((a, b) => b.length - a.length)[0];
      const bare = unit ? said.slice(0, -unit.length - 1) : said;
      const read = numbersIn(bare, name).map((n) => n * (unit ? SI[unit]! : 1));
      const truth = Array.isArray(v) ? v : [v];
      if (read.length !== truth.length || truth.some((t, k) => Math.abs(read[k]! / t - 1) > 1e-4))
        misread.push(`${name}: ${said} is not ${JSON.stringify(v)}`);
    }
    expect(misread).toEqual([]);
    expect(numeric.length).toBeGreaterThan(3000);
  });

  test('still agrees: watts as printed are volts, amps, power factor and efficiency as printed', () => {
    let checked = 0;
    for (const { copy, machine } of copies) {
      if (machine.wrong.length || machine.powerIs === 'input' || !machine.phases) continue;
      for (const row of copy.rows) {
        const number = (name: string) => {
          const value = row.map((i) => i.fields[name]).find((v) => v !== undefined);
          return (Array.isArray(value) ? value[0] : value) as number | undefined;
        };
        const [power_W, volts, amps] = [number('ratedPower_W')!, number('voltage_V')!, number('current_A')!];
        const [powerFactor, efficiency] = [number('powerFactor'), number('efficiency')];
        const isRange = row.some((i) => i.quantity === 'voltage' && /\d\s?[-–÷]\s?\d/.test(i.value));
        if (!powerFactor || !efficiency || isRange) continue;
        const shaft_W = apparent_VA(machine.phases, volts, amps) * powerFactor * efficiency;
        expect(Math.abs(shaft_W / power_W - 1)).toBeLessThan(0.03);
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(40);
  });
});

describe('layouts', () => {
  const overlaps = (a: DrawnPlate['placed'][number]['box'], b: typeof a) =>
    Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > 4 &&
    Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > 4;

  test.each(LAYOUTS.map((l) => l.name))('%s holds every field once, inside the plate, none on another', (name) => {
    const layout = LAYOUTS.find((l) => l.name === name)!;
    const fit = copies.filter(({ copy }) => (copy.rows.length > 1 ? layout.takesRows : !layout.onlyRows)).slice(0, 24);
    expect(fit.length).toBeGreaterThan(5);
    for (const [k, { copy }] of fit.entries()) {
      const making = (['printed', 'stamped', 'cast', 'engraved', 'dotted', 'typed'] as const)[k % 6]!;
      const plate = drawPlate(randomFrom(k), copy, layout, making, true);
      const wanted = new Set(itemsOf(copy).flatMap((i) => Object.keys(i.fields)));
      expect(new Set(plate.placed.map((p) => p.name))).toEqual(wanted);
      const boxes = [...new Map(plate.placed.map((p) => [`${p.box.x} ${p.box.y}`, p.box])).values()];
      const outside = boxes.filter(
        (b) => b.x < 0 || b.y < 0 || b.x + b.width > plate.width || b.y + b.height > plate.height,
      );
      const crossing = boxes.flatMap((a, i) => boxes.slice(i + 1).flatMap((b) => (overlaps(a, b) ? [[a, b]] : [])));
      expect({ outside, crossing }).toEqual({ outside: [], crossing: [] });
    }
  });

  test('kept back come only when asked for', () => {
    for (let k = 0; k < 300; k++) expect(layoutFor(randomFrom(k), 'iec', 1, false).heldBack).toBeUndefined();
    const seen = new Set(Array.from({ length: 300 }, (_, k) => layoutFor(randomFrom(k), 'iec', 1, true).name));
    expect(LAYOUTS.filter((l) => l.heldBack).every((l) => seen.has(l.name))).toBe(true);
  });

  test('faces and materials keep a part back too', () => {
    for (const list of [LAYOUTS, MATERIALS, FACES]) {
      const share = list.filter((one) => one.heldBack).length / list.length;
      expect(share).toBeGreaterThan(0.13);
      expect(share).toBeLessThan(0.3);
    }
  });
});
