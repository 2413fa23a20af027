import { describe, expect, test } from 'vitest';
import {
  ductworkIssues,
  ductworkWarnings,
  type Ductwork,
  type Element,
  type Section,
} from '../../../src/duct/index.ts';

const pipe: Element = { kind: 'pipe', surface: 'drain-pipe', length_m: 2, diameter_m: 0.1 };
const section = (id: string, into: string, more: Partial<Section> = {}): Section => ({
  id,
  into,
  elements: [pipe],
  ...more,
});
const machine = (id: string, into: string, more: Partial<Section> = {}): Section =>
  section(id, into, { pickup: {}, ...more });
const issues = (sections: Section[], discharge: Element[] = []) => ductworkIssues({ sections, discharge });

test('a plain shop is possible and nothing is odd about it', () => {
  const shop: Ductwork = {
    sections: [
      machine('saw', 'main'),
      machine('planer', 'main'),
      section('main', 'blower'),
      machine('sweep', 'blower'),
    ],
    discharge: [pipe, { kind: 'exit', diameter_m: 0.16 }],
  };
  expect(ductworkIssues(shop)).toEqual([]);
  expect(ductworkWarnings(shop)).toEqual([]);
});

describe('impossible trees', () => {
  test('two of one name', () => {
    expect(issues([machine('saw', 'blower'), machine('saw', 'blower')])).toEqual([
      {
        code: 'duplicate-id',
        path: '/ductwork/sections/1/id',
        message: 'Two sections are called “saw” (numbers 1 and 2). Give one of them another id.',
      },
    ]);
  });

  test("the blower's name", () => {
    expect(issues([machine('blower', 'blower')])).toEqual([
      {
        code: 'duplicate-id',
        path: '/ductwork/sections/0/id',
        message: 'A section cannot be called “blower”: that name is kept for the blower itself. Give it another id.',
      },
    ]);
  });

  test('into nowhere', () => {
    expect(issues([machine('saw', 'mian'), section('main', 'blower')])).toEqual([
      {
        code: 'flows-nowhere',
        path: '/ductwork/sections/0/into',
        message: 'Section “saw” flows into “mian”, and there is no such section. Name an existing section or “blower”.',
      },
    ]);
  });

  test('into itself', () => {
    expect(issues([machine('saw', 'blower'), section('loop', 'loop')])).toEqual([
      {
        code: 'flows-in-a-circle',
        path: '/ductwork/sections/1/into',
        message: 'Section “loop” flows into itself. Let it flow into the next section or into “blower”.',
      },
    ]);
  });

  test('in a circle, told once, with what leads into it left alone', () => {
    const found = issues([
      machine('saw', 'a'),
      section('a', 'b'),
      section('b', 'c'),
      section('c', 'a'),
      machine('x', 'blower'),
    ]);
    expect(found).toEqual([
      {
        code: 'flows-in-a-circle',
        path: '/ductwork/sections/1/into',
        message: 'These sections flow in a circle: “a” → “b” → “c” → “a”. Let one of them flow towards “blower”.',
      },
    ]);
  });

  test('a long circle is cut short', () => {
    const ring = Array.from({ length: 5000 }, (_, i) => section(`s${i}`, `s${(i + 1) % 5000}`));
    const [issue, ...others] = issues(ring);
    expect(others).toEqual([]);
    expect(issue!.message).toBe(
      'These sections flow in a circle: “s0” → “s1” → “s2” → “s3” → “s4” → “s5” → … → “s0”. Let one of them flow towards “blower”.',
    );
  });

  test('a machine in the middle of a trunk', () => {
    expect(issues([machine('saw', 'main'), machine('main', 'blower')])).toEqual([
      {
        code: 'contradiction',
        path: '/ductwork/sections/1/pickup',
        message:
          'Section “main” has a machine and other sections flowing into it. Give the machine a section of its own that flows into “main”.',
      },
    ]);
  });

  test('no machine at all', () => {
    expect(issues([section('main', 'blower')])).toEqual([
      {
        code: 'no-pickup',
        path: '/ductwork/sections',
        message:
          'No machine is connected: no section has a "pickup". Add one to each section that starts at a machine.',
      },
    ]);
  });
});

describe('impossible elements', () => {
  const only = (element: Element) => issues([machine('saw', 'blower', { elements: [element] })]);

  test('a fitting nobody knows needs a k', () => {
    const unknown: Element = { kind: 'fitting', fitting: 'pigtail', diameter_m: 0.1 };
    const [issue] = only(unknown);
    expect(issue).toMatchObject({ code: 'not-understood', path: '/ductwork/sections/0/elements/0/fitting' });
    expect(issue!.message).toMatch(
      /^No fitting is called “pigtail”\. Use one of elbow-90, elbow-60, .*, or give its own loss coefficient as "k"\.$/,
    );
    expect(only({ ...unknown, k: 0.7 })).toEqual([]);
  });

  test('an entry nobody knows needs a k', () => {
    expect(only({ kind: 'entry', entry: 'funnel', diameter_m: 0.1 })[0]!.message).toBe(
      'No entry is called “funnel”. Use one of plain, flanged, bell-mouth, tapered-hood, grinder-hood, grinder-hood-tapered, booth, settling-trap, machine-port, or give its own loss coefficient as "k".',
    );
    expect(only({ kind: 'entry', entry: 'funnel', diameter_m: 0.1, k: 0.2 })).toEqual([]);
  });

  test('a cyclone without an inlet size, or with its outlet as wide as its body', () => {
    expect(only({ kind: 'cyclone', k: 4 })).toEqual([
      {
        code: 'out-of-range',
        path: '/ductwork/sections/0/elements/0/inletDiameter_m',
        message: 'The inlet of this cyclone has no size. Give its inside diameter, or its width and height.',
      },
    ]);
    expect(
      only({ kind: 'cyclone', inletDiameter_m: 0.1, outletDiameter_m: 0.4, bodyDiameter_m: 0.4 })[0]!.message,
    ).toBe('The outlet pipe (0.4 m) must be narrower than the body of the cyclone (0.4 m).');
  });

  test('walls rougher than the pipe is wide', () => {
    expect(only({ ...pipe, roughness_m: 0.05 })[0]).toMatchObject({
      code: 'out-of-range',
      path: '/ductwork/sections/0/elements/0/roughness_m',
      message:
        'A roughness of 0.05 m does not fit into a pipe 0.1 m wide. Roughness is the height of the grains of the wall, usually well under a millimetre (0.001 m).',
    });
    expect(only({ ...pipe, surface: 'flexible-hose', diameter_m: 0.01 })[0]!.message).toBe(
      'A pipe 0.01 m wide is too narrow for this surface, whose grains are 0.003 m high. Check the diameter.',
    );
  });

  test('filters that get better by filling', () => {
    const each = { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 300, loadedPressure_Pa: 100 };
    expect(only({ kind: 'filters', count: 2, each })[0]).toMatchObject({
      code: 'contradiction',
      path: '/ductwork/sections/0/elements/0/each/loadedPressure_Pa',
      message:
        'A full filter cannot lose less (100 Pa) than a new one (300 Pa). Exchange the two, or leave the loaded one out.',
    });
  });

  test('sizes and flows that are above zero and still nothing', () => {
    expect(only({ ...pipe, diameter_m: 1e-200 }).find(({ path }) => path.endsWith('diameter_m'))!.message).toBe(
      '1e-200 m is too narrow for a duct: at least 0.001 m. Is the unit right?',
    );
    expect(
      only({ kind: 'filters', count: 1, each: { cleanFlow_m3_s: 1e-12, cleanPressure_Pa: 100 } })[0],
    ).toMatchObject({
      path: '/ductwork/sections/0/elements/0/each/cleanFlow_m3_s',
      message: 'A test flow of 1e-12 m3/s is next to nothing. Is the unit right?',
    });
  });

  test('in the run behind the blower', () => {
    expect(issues([machine('saw', 'blower')], [{ kind: 'cyclone' }])[0]!.path).toBe(
      '/ductwork/discharge/0/inletDiameter_m',
    );
  });
});

describe('what is odd or assumed', () => {
  const warnings = (sections: Section[], discharge: Element[] = []) => ductworkWarnings({ sections, discharge });

  test('a run without exit', () => {
    expect(warnings([machine('saw', 'blower')], [pipe])).toEqual([
      {
        code: 'no-exit',
        path: '/ductwork/discharge',
        text: 'The run behind the blower has no "exit": nothing is lost at its end. Add an exit where the air leaves it.',
      },
    ]);
    expect(warnings([machine('saw', 'blower')])).toEqual([]);
  });

  test('dead ends and gates on trunks', () => {
    const found = warnings([
      machine('saw', 'main'),
      section('main', 'blower', { gate: {} }),
      section('stub', 'blower'),
    ]);
    expect(found.map(({ code, text }) => [code, text])).toEqual([
      [
        'gate-on-trunk',
        'The gate in section “main” serves several machines. Plans name machines only, so it is taken as open.',
      ],
      ['dead-end', 'Section “stub” starts at no machine and nothing flows into it: it is a dead end without air.'],
    ]);
  });

  test('a surface and a loaded filter that are not given', () => {
    const elements: Element[] = [
      { kind: 'pipe', length_m: 1, diameter_m: 0.1 },
      { kind: 'filters', count: 1, each: { cleanFlow_m3_s: 0.1, cleanPressure_Pa: 100 } },
    ];
    expect(warnings([machine('saw', 'blower', { elements })])).toEqual([
      {
        code: 'surface-assumed',
        path: '/ductwork/sections/0/elements/0/surface',
        text: 'The surface of this pipe is not given: galvanised duct is assumed, with much doubt.',
      },
      {
        code: 'loaded-pressure-unknown',
        path: '/ductwork/sections/0/elements/1/each/loadedPressure_Pa',
        text: 'What these filters lose when full is not given: the loaded state is reckoned as clean, so it looks better than it is.',
      },
    ]);
  });
});
