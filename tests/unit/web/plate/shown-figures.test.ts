import { describe, expect, it } from 'vitest';
import { chooseRating, sayFigure } from '../../../../web/edits/change-plate.ts';
import type { PlateFigure } from '../../../../web/plate/plate-fields.ts';
import type { PlateWork } from '../../../../web/plate/plate-work.ts';
import { ratingsOf } from '../../../../web/plate/ratings.ts';
import { isReady, kindOfPlate, shownFigures, type ShownFigure } from '../../../../web/plate/shown-figures.ts';
import { readingOf, workOf } from './readings-of-plates.ts';

const supply = { voltage_V: 400, phases: 3, frequency_Hz: 50 } as const;
const UNITS: Record<string, string> = {
  power: 'kW',
  voltage: 'V',
  current: 'A',
  speed: 'rpm',
  frequency: 'Hz',
  flow: 'm³/h',
  pressure: 'mm water',
  length: 'mm',
  capacity: 'µF',
};
const shown = (work: PlateWork): ShownFigure[] =>
  shownFigures(work, { supply, unitOf: ({ unit, quantity }) => unit ?? UNITS[quantity]! });
const figure = (work: PlateWork, name: PlateFigure): ShownFigure => shown(work).find(({ form }) => form.name === name)!;

const plate = readingOf({
  ratedPower_W: { value: 2237.1, asPrinted: '3 HP' },
  voltage_V: { value: [220, 380], asPrinted: '220/380 V' },
  current_A: { value: [8.54, 4.94], asPrinted: '8,54/4,94 A', needsReview: true },
  speed_rpm: { value: 2800, asPrinted: '2800' },
});

describe('figures of a plate as they stand on the page', () => {
  it('are written as printed where the print means the value, and keep the value that was read', () => {
    const power = figure(workOf(plate), 'ratedPower_W');
    expect([power.text, power.value, power.standing]).toEqual(['3 HP', 2237.1, 'sure']);
    expect(figure(workOf(plate), 'speed_rpm').text).toBe('2800 rpm');
  });

  it('show the rating that suits the mains, and its neighbour once that is chosen', () => {
    const work = workOf(plate);
    expect([figure(work, 'voltage_V').text, figure(work, 'current_A').text]).toEqual(['380 V', '4.94 A']);
    const other = chooseRating(0, ratingsOf(plate))(work);
    expect([figure(other, 'voltage_V').text, figure(other, 'current_A').text]).toEqual(['220 V', '8.54 A']);
  });

  it('are not taken over while doubted; a tap or other words settle it, and emptying leaves it out', () => {
    const work = workOf(plate);
    expect([figure(work, 'current_A').standing, isReady(figure(work, 'current_A'))]).toEqual(['doubted', false]);
    const seen = sayFigure('current_A', { seen: true })(work);
    expect([figure(seen, 'current_A').standing, figure(seen, 'current_A').value]).toEqual(['said', 4.94]);
    const typed = sayFigure('current_A', { text: '4,84' })(work);
    expect([isReady(figure(typed, 'current_A')), figure(typed, 'current_A').value]).toEqual([true, 4.84]);
    const emptied = sayFigure('current_A', { text: '' })(work);
    expect([figure(emptied, 'current_A').standing, isReady(figure(emptied, 'current_A'))]).toEqual(['several', false]);
    expect(isReady(figure(sayFigure('current_A', { text: 'four' })(work), 'current_A'))).toBe(false);
    expect(figure(sayFigure('current_A', null)(typed), 'current_A').standing).toBe('doubted');
  });

  it('keep their place among those asked about when they are settled', () => {
    expect(figure(sayFigure('current_A', { seen: true })(workOf(plate)), 'current_A').isAsked).toBe(true);
  });

  it('name what a motor’s plate must say and does not, and stay empty', () => {
    const missing = shown(workOf(plate)).filter(({ standing }) => standing === 'missing');
    expect(missing.map(({ form, text, value }) => [form.name, text, value])).toEqual([
      ['frequency_Hz', '', null],
      ['phases', '', null],
    ]);
    expect(shown(workOf(null, { byHand: true })).map(({ form }) => form.name)).toEqual([
      'ratedPower_W',
      'voltage_V',
      'current_A',
      'speed_rpm',
      'frequency_Hz',
      'phases',
    ]);
  });

  it('ask which one counts where several are printed and no rating tells them apart', () => {
    const loads = readingOf({ efficiency: { value: [0.88, 0.87], asPrinted: '88 / 87 %' } });
    const { standing, text, value } = figure(workOf(loads), 'efficiency');
    expect([standing, text, value]).toEqual(['several', '', null]);
  });

  it('words typed for one rating go when another is chosen; that the print was right stays', () => {
    let work = sayFigure('voltage_V', { text: '415 V' })(workOf(plate));
    work = sayFigure('current_A', { seen: true })(work);
    work = chooseRating(0, ratingsOf(plate))(work);
    expect([figure(work, 'voltage_V').value, figure(work, 'current_A').value]).toEqual([220, 8.54]);
    expect(figure(work, 'current_A').standing).toBe('said');
  });
});

describe('whose plate it is', () => {
  it('is a blower’s where it speaks of air or a wheel and of no volts', () => {
    expect(kindOfPlate(readingOf({ flow_m3_s: 1.2, pressure_Pa: 1510, ratedPower_W: 4000 }))).toBe('blower');
    expect(kindOfPlate(readingOf({ flow_m3_s: 0.05, pressure_Pa: 22_500, voltage_V: [230] }))).toBe('motor');
    expect(kindOfPlate(null)).toBe('motor');
  });
});
