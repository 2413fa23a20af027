import { describe, expect, test } from 'vitest';
import { parseTitle } from '../../../../src/chart/labels/title.ts';

describe('axis titles', () => {
  test.each([
    ['Volume flow [m³/h]', 'flow', 'm³/h'],
    ['Inlet volume (m3/min)', 'flow', 'm³/min'],
    ['CAPACITY – CFM', 'flow', 'CFM'],
    ['Capacity C.EM', 'flow', 'CFM'],
    ['Airflow (C.FE.M.)', 'flow', 'CFM'],
    ['Air delivery, L/s', 'flow', 'L/s'],
    ['Volumenstrom qV in m³/h', 'flow', 'm³/h'],
    ['Débit (m³/s)', 'flow', 'm³/s'],
    ['Fan static pressure [mm WG]', 'static_pressure', 'mm water'],
    ['SP (in. WG)', 'static_pressure', 'in water'],
    ['Pressure, static inches WG', 'static_pressure', 'in water'],
    ['Statischer Druck [Pa]', 'static_pressure', 'Pa'],
    ['Presión estática, mmca', 'static_pressure', 'mm water'],
    ['Total pressure [kPa]', 'total_pressure', 'kPa'],
    ['Gesamtdruckdifferenz Δpt [daPa]', 'total_pressure', 'daPa'],
    ['Prevalenza statica [Pa]', 'static_pressure', 'Pa'],
    ['Press. totale [Pa]', 'total_pressure', 'Pa'],
    ['Eficiencia / %', 'efficiency', '%'],
    ['Pressione totale [mbar]', 'total_pressure', 'mbar'],
    ['Power at shaft [kW]', 'shaft_power', 'kW'],
    ['Puissance absorbée (W)', 'shaft_power', 'W'],
    ['Brake horsepower, BHP', 'shaft_power', 'HP'],
    ['Efficiency [%]', 'efficiency', '%'],
    ['Rendimiento η [%]', 'efficiency', '%'],
    ['P [kW]', 'shaft_power', 'kW'],
    ['V [10° m?*h]', 'flow', 'm³/h'],
    ['Q (M3/c)', 'flow', 'm³/s'],
    ['Inlet volume [m>*min]', 'flow', 'm³/min'],
    ['Wet voluwe [w?fhl', 'flow', 'm³/h'],
    ['Nonxoe nasnexye (MM oa.', 'total_pressure', 'mm water'],
    ['CraTtnyeckoe pnasnenune [daPa]', 'static_pressure', 'daPa'],
    ['Cratudeckoe naBnenune [Klla]', 'static_pressure', 'kPa'],
    ['pst (Mmm BOA. CT.)', 'static_pressure', 'mm water'],
    ['pst [Pa]', 'static_pressure', 'Pa'],
    ['psF [daPa]', 'static_pressure', 'daPa'],
    ['Ps [Pal', 'static_pressure', 'Pa'],
    ['qv [CMM1', 'flow', 'm³/min'],
    ['psF [inH20]', 'static_pressure', 'in water'],
    ['Caudal (Ls)', 'flow', 'L/s'],
    ['Statik basinc [mmSS]', 'static_pressure', 'mm water'],
    ['Static press [inche WG]', 'static_pressure', 'in water'],
    ['IIpou3BOOUTEIBHOCTH, M3/4', 'flow', 'm³/h'],
    ['ITonHoe maBiaeHnue, Ila', 'total_pressure', 'Pa'],
    ['Pacxon Bo3ayxa, M3/4', 'flow', 'm³/h'],
    ['CTATUMECKOE NABNEHMUE (xNa)', 'static_pressure', 'kPa'],
  ])('%s', (text, quantity, unit) => {
    const title = parseTitle(text);
    expect([title.quantity, title.unit?.unit.unit]).toEqual([quantity, unit]);
  });

  test.each([
    ['Volume flow [m?/h]', 'flow', 'm³/h'],
    ['Velume flaw [m®/s]', 'flow', 'm³/s'],
    ['SP [Pa', 'static_pressure', 'Pa'],
    ['Capacity (Lis', 'flow', 'L/s'],
    ['Static head, mmwWC', 'static_pressure', 'mm water'],
    ['Static pressue ps [Pal', 'static_pressure', 'Pa'],
    ['Pression tota e (Pa)', 'total_pressure', 'Pa'],
    ['STAT C PRESS. – in. WG', 'static_pressure', 'in water'],
    ['Power at shaft [KW]', 'shaft_power', 'kW'],
    ['Debi [1/5]', 'flow', 'L/s'],
    ['Pressione totale [daPal]', 'total_pressure', 'daPa'],
    ['statica [Pa]', 'static_pressure', 'Pa'],
    ['totale (mbar)', 'total_pressure', 'mbar'],
    ['Q {Vsec)', 'flow', 'L/s'],
    ['Luftvolumenstrom |/sec', 'flow', 'L/s'],
    ['Flow fate Q [mw mun]', 'flow', 'm³/min'],
    ['Caudal volumétrico com/h', 'flow', 'm³/h'],
    ['Presion estatica mm CQ', 'static_pressure', 'mm water'],
    ['Capacity {1000 #t*/min]', 'flow', 'CFM'],
  ])('with slips of the reader: %s', (text, quantity, unit) => {
    const title = parseTitle(text);
    expect([title.quantity, title.unit?.unit.unit]).toEqual([quantity, unit]);
  });

  test.each([
    ['Q x 1000 m3/h', 1000],
    ['Volume flow [×10³ m³/h]', 1000],
    ['Pressure (Pa) x 100', 100],
    ['Static pressure (1000 Pa)', 1000],
    ['Volume flow [m³/h]', 1],
    ['Flow, 10^3 CFM', 1000],
    ['Capacity (cbm/h x10?)', 1000],
    ['Débit d’air [10° L/s]', 1000],
    ['Flow [m³/h] at 10 °C', 1],
  ])('%s multiplies by %d', (text, multiplier) => expect(parseTitle(text).multiplier).toBe(multiplier));

  test('a pressure that says not which stays one', () => {
    expect(parseTitle('Pressure [Pa]').quantity).toBe('pressure');
    expect(parseTitle('Druckerhöhung Δp [Pa]').quantity).toBe('pressure');
  });

  test('what is none of a fan curve is not taken for one', () => {
    expect(parseTitle('Sound power level').quantity).toBe('other');
    expect(parseTitle('Drehzahl n').quantity).toBe('other');
    expect(parseTitle('Velocity pressure [Pa]').quantity).toBe('other');
  });

  test('a unit alone says no quantity', () => {
    expect(parseTitle('m³/h').quantity).toBeNull();
    expect(parseTitle('Curva caratteristica PW-55').quantity).toBeNull();
    expect(parseTitle('m³/h').unit?.unit.unit).toBe('m³/h');
    expect(parseTitle('Pa').quantity).toBeNull();
  });
});
