import { describe, expect, test } from 'vitest';
import { nameColumns } from '../../../src/readings-sheet/heads/name-columns.ts';

const named = (...headers: string[][]) =>
  nameColumns(headers).map(({ quantity, unit }) => `${quantity} ${unit?.unit ?? '-'}`);

describe('what stands over columns', () => {
  test('names and units on two lines, in brackets, behind a comma', () => {
    expect(
      named(
        ['Opening no.'],
        ['Static pressure', 'mm WG'],
        ['Velocity pressure (mm WG)'],
        ['Current, A'],
        ['Speed', 'rpm'],
      ),
    ).toEqual([
      'opening -',
      'staticPressure_Pa mm water',
      'velocityPressure_Pa mm water',
      'current_A A',
      'speed_rpm rpm',
    ]);
  });

  test('a sign and its unit read as one word', () => {
    expect(named(['PW'], ['IA'])).toEqual(['inputPower_W W', 'current_A A']);
    expect(named(['| PW]'])).toEqual(['inputPower_W W']);
    expect(named(['Pw]'], ['Ps [Pa]'])).toEqual(['inputPower_W W', 'staticPressure_Pa Pa']);
  });

  test('a unit alone is no other that looks like its end, and a sign over one no unit', () => {
    expect(named(['min-1'])).toEqual(['speed_rpm rpm']);
    expect(named(['Pe', 'mba'])).toEqual(['staticPressure_Pa mbar']);
    expect(named(['| Input, kW', 'W|'])).toEqual(['inputPower_W kW']);
  });

  test('a clear name is not ruled out by what its unit was misread as', () => {
    expect(named(['Hole 0', 'min'])).toEqual(['orificeDiameter_m -']);
  });

  test('a unit nobody can mistake rules out a name of another kind', () => {
    expect(named(['Pe [mbar]'], ['Ve/l»', 'fmm WG]'])).toEqual([
      'staticPressure_Pa mbar',
      'velocityPressure_Pa mm water',
    ]);
  });

  test.each([
    [['Nr.'], ['Stat. Druck', 'Pa'], ['Volumenstrom', 'm³/h'], ['Strom', 'A'], ['Drehzahl', 'min-1']],
    [['N°'], ['Pression stat.', 'Pa'], ['Débit', 'm³/h'], ['Intensité', 'A'], ['Vitesse', 'tr/min']],
    [['Punto'], ['Pressione statica', 'mm c.a.'], ['Portata', 'm³/h'], ['Corrente', 'A'], ['Giri', 'giri/min']],
    [['Punto'], ['Presión estática', 'mm c.a.'], ['Caudal', 'm³/h'], ['Corriente', 'A'], ['Velocidad', 'r/min']],
    [['Lp.'], ['Ciśnienie statyczne', 'Pa'], ['Przepływ', 'm³/h'], ['Prąd', 'A'], ['Obroty', 'obr/min']],
    [['Sıra'], ['Statik basınç', 'Pa'], ['Debi', 'm³/h'], ['Akım', 'A'], ['Devir', 'd/dk']],
  ])('in many languages: %j', (...headers) => {
    expect(nameColumns(headers).map(({ quantity, unit }) => `${quantity} ${unit?.quantity ?? '-'}`)).toEqual([
      'opening -',
      'staticPressure_Pa pressure',
      'flow_m3_s flow',
      'current_A current',
      'speed_rpm speed',
    ]);
  });

  test('signs of formulas are told apart by their units', () => {
    expect(named(['Ps', 'Pa'], ['Pv', 'Pa'], ['I', 'A'], ['n', 'rpm'], ['P', 'W'])).toEqual([
      'staticPressure_Pa Pa',
      'velocityPressure_Pa Pa',
      'current_A A',
      'speed_rpm rpm',
      'inputPower_W W',
    ]);
  });

  test('a misread letter does not hide a name, and a word that is none stays unnamed', () => {
    expect(named(['Volumenstiom', "m'/h"], ['Bemerkung'])).toEqual(['flow_m3_s m³/h', 'null -']);
  });
});
