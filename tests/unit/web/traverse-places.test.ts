import { describe, expect, it } from 'vitest';
import reference from '../../../fixtures/reference/flow_measurement.json';
import { PER_RADIUS, traversePlaces } from '../../../web/readings/traverse-places.ts';

describe('where to hold the instrument', () => {
  it.each(['log-Tchebycheff', 'log-linear'] as const)(
    'marks of a 200 mm pipe, %s, after the printed tables',
    (rule) => {
      // printed to 0.001 of the diameter: ISO 5802, tables 2 and 3, in the fixture
      const rows = reference.sections.traverse_circular.rows.filter((row) => row.method === rule);
      for (const perRadius of PER_RADIUS) {
        const printed = rows.find((row) => row.points_per_radius === perRadius)!.published_3dec!;
        const places = traversePlaces({ method: 'pitot-traverse', pipeDiameter_m: 0.2 }, rule, perRadius)!;
        expect(places.count).toBe(4 * perRadius);
        printed.forEach((share, i) => expect(Math.abs(places.ways[0]!.marks_m[i]! / 0.2 - share)).toBeLessThan(1e-3));
      }
    },
  );

  it('a channel has its own marks along width and height, and a reading at every crossing', () => {
    const places = traversePlaces({ method: 'vane-traverse', width_m: 0.3, height_m: 0.2 }, 'log-linear', 3)!;
    expect(places.ways.map((way) => way.marks_m.length ** 2)).toEqual([places.count, places.count]);
    // the middle of five
    expect(places.ways.map((way) => way.marks_m[2])).toEqual([expect.closeTo(0.15, 9), expect.closeTo(0.1, 9)]);
  });

  it('nothing is said of a pipe without a width, or with a hub in its middle', () => {
    expect(traversePlaces({ method: 'pitot-traverse' }, 'log-linear', 3)).toBeNull();
    expect(
      traversePlaces({ method: 'vane-traverse', pipeDiameter_m: 0.3, hubDiameter_m: 0.1 }, 'log-linear', 3),
    ).toBeNull();
  });
});
