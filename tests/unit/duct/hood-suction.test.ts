import { expect, test } from 'vitest';
import { hoodSuction_Pa } from '../../../src/duct/index.ts';
import type { Element } from '../../../src/duct/index.ts';

const air = { density_kg_m3: 1.2, viscosity_Pa_s: 1.82e-5, pressure_Pa: 101325 };
const pipe: Element = { kind: 'pipe', surface: 'drain-pipe', length_m: 3, diameter_m: 0.1 };
const flowAt20 = 20 * Math.PI * 0.05 ** 2;

test('behind a hood a tube shows the velocity pressure and what the hood lost', () => {
  const hood = (k: number): Element => ({ kind: 'entry', diameter_m: 0.1, k });
  // 20 m/s at 1.2 kg/m3 is 240 Pa
  expect(hoodSuction_Pa([hood(0), pipe], flowAt20, air)).toBeCloseTo(240, 6);
  expect(hoodSuction_Pa([hood(0.5), pipe], flowAt20, air)).toBeCloseTo(360, 6);
  expect(hoodSuction_Pa([hood(0.5), pipe], flowAt20 / 2, air)).toBeCloseTo(90, 6);
  expect(hoodSuction_Pa([hood(0.5), pipe], 0, air)).toBe(0);
});

test('the port of 20 m/s that a panel saw’s manual asks 1,200 Pa at has a k of 4', () => {
  // fixtures/reference/workshop.json, machine_ports: 1200 Pa asked at 20 m/s, K = 4
  expect(hoodSuction_Pa([{ kind: 'entry', diameter_m: 0.1, k: 4 }], flowAt20, air)).toBeCloseTo(1200, 6);
});

test('a branch that begins without a hood has none to read', () => {
  expect(hoodSuction_Pa([pipe], 0.1, air)).toBeNull();
  expect(hoodSuction_Pa([], 0.1, air)).toBeNull();
});
