import type { GatePlan, Job, Section } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { mainDiameter_m } from './duct-run.ts';
import { typedMoved } from './duct-typed.ts';

const CATCHERS: readonly string[] = ['cyclone', 'filters'];

/** A short id that no section has yet: the name in letters a path can hold, a number behind it where needed. */
export function freeId(job: Job, name: string): string {
  const base =
    name
      .normalize('NFC')
      .toLowerCase()
      .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'machine';
  const taken = new Set([...job.ductwork.sections.map((section) => section.id), 'blower']);
  if (!taken.has(base)) return base;
  let n = 2;
  while (taken.has(`${base}-${n}`)) n += 1;
  return `${base}-${n}`;
}

/** What a machine's branch is made of where there is none to copy. */
const firstBranch = (into: string): Omit<Section, 'id'> => ({
  into,
  pickup: {},
  gate: {},
  elements: [
    { kind: 'entry', entry: 'machine-port', diameter_m: 0.1036 },
    { kind: 'pipe', surface: 'flexible-hose', length_m: 1.5, diameter_m: 0.1036 },
    { kind: 'pipe', surface: 'drain-pipe', length_m: 3, diameter_m: 0.1036 },
    { kind: 'branch-entry', angle_deg: 45, diameter_m: 0.1036 },
  ],
});

/**
 * Adds a machine with a copy of another machine's branch. Where that branch ran straight to the blower, the two need a
 * pipe in common first: what catches the dust and all behind it becomes their main.
 */
export function addMachine(job: Job, copyOf: string | null, name: string): Edited & { id: string } {
  const shared = withMain(job, copyOf);
  const model = shared.ductwork.sections.find((section) => section.id === copyOf);
  const id = freeId(shared, name);
  const branch: Omit<Section, 'id'> = model ? structuredClone({ ...model, label: undefined }) : firstBranch('blower');
  const section: Section = { ...branch, id, pickup: { ...branch.pickup, machine: name } };
  if (section.label === undefined) delete section.label;
  const at = model ? shared.ductwork.sections.indexOf(model) + 1 : shared.ductwork.sections.length;
  const sections = shared.ductwork.sections.toSpliced(at, 0, section);
  const asTyped = typedMoved(shared, '/ductwork/sections', (i) => (i < at ? i : i + 1));
  const gatePlans = shared.gatePlans && [...shared.gatePlans, { name: `${id} alone`, open: [id] }];
  return {
    job: { ...shared, ductwork: { ...shared.ductwork, sections }, ...(gatePlans && { gatePlans }), asTyped },
    note: 'section',
    id,
  };
}

/** Splits a machine's run to the blower into its own branch and a main that others can flow into. */
function withMain(job: Job, id: string | null): Job {
  const { sections } = job.ductwork;
  const at = sections.findIndex((section) => section.id === id);
  const section = sections[at];
  if (!section || section.into !== 'blower') return job;
  const cut = section.elements.findIndex((element) => CATCHERS.includes(element.kind));
  const own = cut < 0 ? section.elements : section.elements.slice(0, cut);
  const behind = cut < 0 ? [] : section.elements.slice(cut);
  const diameter_m = mainDiameter_m(own) ?? 0.1;
  const mainId = freeId(job, 'main');
  const branch: Section = { ...section, into: mainId, gate: section.gate ?? {}, elements: own };
  const main: Section = {
    id: mainId,
    into: 'blower',
    elements: [{ kind: 'pipe', surface: 'drain-pipe', length_m: 2, diameter_m }, ...behind],
  };
  // what was typed for pieces that now belong to the main goes with them
  const prefix = `/ductwork/sections/${at}/elements`;
  const mainPrefix = `/ductwork/sections/${sections.length}/elements`;
  const asTyped = Object.fromEntries(
    Object.entries(job.asTyped ?? {}).map(([pointer, text]) => {
      const [index = '', ...rest] = pointer.startsWith(`${prefix}/`) ? pointer.slice(prefix.length + 1).split('/') : [];
      const moved = index !== '' && cut >= 0 && Number(index) >= cut;
      return [moved ? [mainPrefix, Number(index) - cut + 1, ...rest].join('/') : pointer, text];
    }),
  );
  return { ...job, ductwork: { ...job.ductwork, sections: [...sections.toSpliced(at, 1, branch), main] }, asTyped };
}

/**
 * Takes a section away. A machine goes with its gate plans, and with every sub-main that no machine is left on;
 * a main goes alone, what flowed into it flows on into the next. The last machine stays.
 */
export function removeSection(job: Job, id: string): Edited {
  const { sections } = job.ductwork;
  const gone = new Set<string>();
  const section = sections.find((one) => one.id === id);
  if (!section) return { job, note: 'section' };
  const isLeaf = !sections.some((one) => one.into === id);
  if (!isLeaf) return without(job, new Set([id]), (one) => (one.into === id ? { ...one, into: section.into } : one));
  let last: Section | undefined = section;
  while (last) {
    gone.add(last.id);
    const next: string = last.into;
    const alone = !sections.some((one) => one.into === next && !gone.has(one.id));
    last = alone ? sections.find((one) => one.id === next && !one.pickup) : undefined;
  }
  if (!sections.some((one) => one.pickup && !gone.has(one.id))) return { job, note: 'section' };
  return without(job, gone, (one) => one);
}

function without(job: Job, gone: ReadonlySet<string>, change: (section: Section) => Section): Edited {
  const { sections } = job.ductwork;
  const moves = (i: number): number | null =>
    gone.has(sections[i]?.id ?? '') ? null : sections.slice(0, i).filter((section) => !gone.has(section.id)).length;
  const asTyped = typedMoved(job, '/ductwork/sections', moves);
  const kept = sections.filter((section) => !gone.has(section.id)).map(change);
  const gatePlans = job.gatePlans?.flatMap((plan): GatePlan[] => {
    const open = plan.open.filter((id) => !gone.has(id));
    return open.length === 0 && plan.open.length > 0 ? [] : [{ ...plan, open }];
  });
  return {
    job: { ...job, ductwork: { ...job.ductwork, sections: kept }, ...(gatePlans && { gatePlans }), asTyped },
    note: 'section',
  };
}

/** Sections a section may flow into without going in a circle. */
export function placesToJoin(job: Job, id: string): string[] {
  const { sections } = job.ductwork;
  const upstream = new Set([id]);
  for (let grew = true; grew;) {
    grew = false;
    for (const section of sections) {
      if (upstream.has(section.into) && !upstream.has(section.id)) {
        upstream.add(section.id);
        grew = true;
      }
    }
  }
  return [
    ...sections.filter((section) => !upstream.has(section.id) && !section.pickup).map((section) => section.id),
    'blower',
  ];
}

/** Lets a section flow into another one. */
export function setInto(job: Job, id: string, into: string): Edited {
  const sections = job.ductwork.sections.map((section) => (section.id === id ? { ...section, into } : section));
  return { job: { ...job, ductwork: { ...job.ductwork, sections } }, note: 'section' };
}
