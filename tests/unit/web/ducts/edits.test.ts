import { describe, expect, test } from 'vitest';
import { checkJob } from '../../../../src/index.ts';
import { ELEMENT_KINDS } from '../../../../src/duct/index.ts';
import { addElement, addKind, moveElement, newElement, removeElement } from '../../../../web/edits/duct-elements.ts';
import { removePlan, setGate, setRequired, toggleGate, usualPlans } from '../../../../web/edits/duct-gates.ts';
import { addMachine, freeId, placesToJoin, removeSection, setInto } from '../../../../web/edits/duct-machines.ts';
import { elementsOf, mainDiameter_m, WAY_OUT } from '../../../../web/edits/duct-run.ts';
import { setRunDiameter } from '../../../../web/edits/duct-size.ts';
import { applyRemedy } from '../../../../web/edits/apply-remedy.ts';
import { branch, DRUM_AND_FILTERS, ducts, fourLevels, jobWith, pipe, threeMachines } from './shops.ts';

const job = () => jobWith(threeMachines());
const valid = (candidate: unknown) => {
  const checked = checkJob(JSON.parse(JSON.stringify(candidate)));
  return checked.ok ? [] : checked.issues;
};

describe('sizes', () => {
  test('a run gets another size wherever it had the old one, and the words typed for it are forgotten', () => {
    const before = {
      ...job(),
      asTyped: {
        '/ductwork/sections/1/elements/1/diameter_m': '4 in',
        '/ductwork/sections/1/elements/1/length_m': '5 ft',
      },
    };
    const { job: after } = setRunDiameter(before, 'saw', 0.1, 0.125);
    expect(elementsOf(after, 'saw').map((element) => 'diameter_m' in element && element.diameter_m)).toEqual([
      0.125, 0.125, 0.125, 0.125,
    ]);
    expect(after.asTyped).toEqual({ '/ductwork/sections/1/elements/1/length_m': '5 ft' });
    expect(elementsOf(before, 'saw')[0]).toMatchObject({ diameter_m: 0.1 });
  });
  test('pieces of another width keep it', () => {
    const { job: after } = setRunDiameter(job(), 'main', 0.1036, 0.125);
    expect(elementsOf(after, 'main')).toMatchObject([
      { diameter_m: 0.125 },
      { inletDiameter_m: 0.15 },
      { diameter_m: 0.15 },
      {},
    ]);
  });
  test('the way out is a run too', () => {
    const { job: after } = setRunDiameter(job(), WAY_OUT, 0.15, 0.2);
    expect(after.ductwork.discharge).toMatchObject([{ diameter_m: 0.2 }, { diameter_m: 0.2 }]);
  });
});

describe('pieces', () => {
  test.each(ELEMENT_KINDS.map((record) => record.kind))(
    'a new %s can be put into a run and worked with at once',
    (kind) => {
      const added = addKind(job(), 'saw', kind as Parameters<typeof addKind>[2]);
      expect(elementsOf(added.job, 'saw')[added.index]!.kind).toBe(kind);
      expect(valid(added.job)).toEqual([]);
    },
  );
  test('a new piece is as wide as its run and stands before the entry into the main', () => {
    const added = addKind(job(), 'saw', 'pipe');
    expect(added.index).toBe(3);
    expect(elementsOf(added.job, 'saw').map((element) => element.kind)).toEqual([
      'entry',
      'pipe',
      'pipe',
      'pipe',
      'branch-entry',
    ]);
    expect(mainDiameter_m(elementsOf(added.job, 'saw'))).toBe(0.1);
  });
  test('texts as typed follow their piece when another is put before it, moved or taken away', () => {
    const typed = {
      '/ductwork/sections/1/elements/2/length_m': '10 ft',
      '/ductwork/sections/0/elements/2/length_m': '3 m',
    };
    const before = { ...job(), asTyped: typed };
    const other = { '/ductwork/sections/0/elements/2/length_m': '3 m' };
    expect(addElement(before, 'saw', newElement('gate', 0.1), 1).job.asTyped).toEqual({
      ...other,
      '/ductwork/sections/1/elements/3/length_m': '10 ft',
    });
    expect(moveElement(before, 'saw', 2, -1).job.asTyped).toEqual({
      ...other,
      '/ductwork/sections/1/elements/1/length_m': '10 ft',
    });
    expect(removeElement(before, 'saw', 2).job.asTyped).toEqual(other);
  });
  test('a piece at the end cannot be moved past it', () => {
    const before = job();
    expect(moveElement(before, 'saw', 0, -1).job).toBe(before);
  });
});

describe('machines', () => {
  test('one more machine starts with a copy of a branch', () => {
    const added = addMachine(job(), 'saw', 'Belt sander');
    expect(added.id).toBe('belt-sander');
    const section = added.job.ductwork.sections.find((one) => one.id === added.id)!;
    expect(section).toMatchObject({ into: 'main', pickup: { machine: 'Belt sander' } });
    expect(section.elements).toEqual(elementsOf(job(), 'saw'));
    expect(valid(added.job)).toEqual([]);
  });
  test('where the only branch ran straight to the blower, both get a main in common, and the drum goes with it', () => {
    const single = branch('saw', 'blower', 'table saw');
    single.elements.push(...DRUM_AND_FILTERS);
    const before = {
      ...jobWith(ducts([single])),
      asTyped: { '/ductwork/sections/0/elements/4/inletDiameter_m': '6 in' },
    };
    const added = addMachine(before, 'saw', 'planer');
    expect(added.job.ductwork.sections.map((one) => [one.id, one.into])).toEqual([
      ['saw', 'main'],
      ['planer', 'main'],
      ['main', 'blower'],
    ]);
    expect(elementsOf(added.job, 'main').map((element) => element.kind)).toEqual([
      'pipe',
      'cyclone',
      'pipe',
      'filters',
    ]);
    expect(added.job.asTyped).toEqual({ '/ductwork/sections/2/elements/1/inletDiameter_m': '6 in' });
    expect(valid(added.job)).toEqual([]);
  });
  test('plans of its own get one for the new machine', () => {
    const before = jobWith(threeMachines(), { gatePlans: [{ name: 'saw', open: ['saw'] }] });
    expect(addMachine(before, 'saw', 'lathe').job.gatePlans).toEqual([
      { name: 'saw', open: ['saw'] },
      { name: 'lathe alone', open: ['lathe'] },
    ]);
  });
  test('ids are free, short, and hold any script', () => {
    expect(freeId(job(), 'saw')).toBe('saw-2');
    expect(freeId(job(), '  Planer / 16" ')).toBe('planer-16');
    expect(freeId(job(), 'رندہ مشین')).toBe('رندہ-مشین');
    expect(freeId(job(), '!!!')).toBe('machine');
    expect(freeId(job(), 'Blower')).toBe('blower-2');
  });
  test('a machine goes with its plans; one left alone keeps the last word', () => {
    const before = jobWith(threeMachines(), {
      gatePlans: [
        { name: 'saw', open: ['saw'] },
        { name: 'two', open: ['saw', 'band'] },
        { name: 'none', open: [] },
      ],
    });
    const { job: after } = removeSection(before, 'saw');
    expect(after.ductwork.sections.map((one) => one.id)).toEqual(['planer', 'band', 'main']);
    expect(after.gatePlans).toEqual([
      { name: 'two', open: ['band'] },
      { name: 'none', open: [] },
    ]);
    const last = jobWith(ducts([branch('saw', 'blower')]));
    expect(removeSection(last, 'saw').job).toBe(last);
  });
  test('a sub-main without machines goes with the last of them', () => {
    const two = jobWith(ducts([branch('a', 'sub'), pipe('sub', 'main'), branch('b', 'main'), pipe('main', 'blower')]));
    const { job: after } = removeSection(two, 'a');
    expect(after.ductwork.sections.map((one) => one.id)).toEqual(['b', 'main']);
    expect(valid(after)).toEqual([]);
  });
  test('when a main goes, what flowed into it flows on', () => {
    const { job: after } = removeSection(jobWith(fourLevels()), 'ab');
    expect(
      after.ductwork.sections
        .filter((one) => one.into === 'abc')
        .map((one) => one.id)
        .sort(),
    ).toEqual(['a', 'b', 'c']);
    expect(valid(after)).toEqual([]);
  });
  test('a section may flow into any main that does not come from it', () => {
    expect(placesToJoin(jobWith(fourLevels()), 'ab')).toEqual(['c', 'abc', 'd', 'main', 'blower']);
    expect(valid(setInto(jobWith(fourLevels()), 'ab', 'd').job)).toEqual([]);
  });
});

describe('gates', () => {
  test('pulling a gate to where a plan stands already only shows that plan', () => {
    expect(toggleGate(job(), { name: 'saw alone', open: ['saw'] }, 'saw')).toMatchObject({ plan: 'all shut' });
    const both = toggleGate(job(), { name: 'planer alone', open: ['planer'] }, 'band');
    expect(both.plan).toBe('planer + band');
    expect(both.edited!.job.gatePlans!.at(-1)).toEqual({
      name: 'planer + band',
      open: ['planer', 'band'],
      required: false,
    });
    const back = toggleGate(both.edited!.job, { name: both.plan, open: ['planer', 'band'] }, 'band');
    expect(back).toEqual({ plan: 'planer alone', edited: null });
  });
  test('trying on from a plan that was only tried changes it in place', () => {
    const first = toggleGate(job(), { name: 'planer alone', open: ['planer'] }, 'band').edited!.job;
    const second = toggleGate(first, { name: 'planer + band', open: ['planer', 'band'] }, 'saw');
    expect(second).toEqual({ plan: 'all together', edited: null });
    const four = addMachine(first, 'saw', 'lathe').job;
    const third = toggleGate(four, { name: 'planer + band', open: ['planer', 'band'] }, 'lathe');
    expect(third.edited!.job.gatePlans!.map((plan) => plan.name)).not.toContain('planer + band');
    expect(valid(third.edited!.job)).toEqual([]);
  });
  test('a machine without a gate is open in every plan and tells none apart', () => {
    const open = setGate(job(), 'band', false).job;
    const pulled = toggleGate(open, { name: 'saw alone', open: ['saw', 'band'] }, 'planer');
    expect(pulled).toEqual({ plan: 'all together', edited: null });
    const shut = toggleGate(open, { name: 'saw alone', open: ['saw', 'band'] }, 'saw');
    expect(shut).toEqual({ plan: 'band alone', edited: null });
  });
  test('a plan can be asked for, or only shown, or forgotten', () => {
    const asked = setRequired(job(), 'all together', true).job;
    expect(asked.gatePlans!.find((plan) => plan.name === 'all together')!.required).toBe(true);
    expect(removePlan(asked, 'all together').job.gatePlans).toHaveLength(3);
    expect(usualPlans(job()).map((plan) => plan.name)).toEqual([
      'planer alone',
      'saw alone',
      'band alone',
      'all together',
    ]);
  });
});

test('a remedy goes into the job, and only the words it overrides are forgotten', () => {
  const before = {
    ...job(),
    asTyped: { '/ductwork/sections/1/elements/1/diameter_m': '4 in', '/site/altitude_m': '1850 m' },
  };
  const { job: after } = applyRemedy(before, {
    change: [{ op: 'replace', path: '/ductwork/sections/1/elements/1/diameter_m', value: 0.15 }],
  });
  expect(elementsOf(after, 'saw')[1]).toMatchObject({ diameter_m: 0.15 });
  expect(after.asTyped).toEqual({ '/site/altitude_m': '1850 m' });
  expect(elementsOf(before, 'saw')[1]).toMatchObject({ diameter_m: 0.1 });
});
