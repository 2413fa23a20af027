import { pointer, type Issue, type Warning } from '../issues/result.ts';
import { BLOWER, type Ductwork, type Section } from './ductwork.ts';
import { elementKind, type Element } from './elements/index.ts';

/** Names as people see them in a sentence. */
const named = (id: string): string => `“${id}”`;

function idIssues(sections: readonly Section[], path: string): Issue[] {
  const issues: Issue[] = [];
  const first = new Map<string, number>();
  sections.forEach(({ id }, index) => {
    const at = `${path}/sections/${index}/id`;
    const before = first.get(id);
    if (id === BLOWER) {
      const message = `A section cannot be called “${BLOWER}”: that name is kept for the blower itself. Give it another id.`;
      issues.push({ code: 'duplicate-id', path: at, message });
    } else if (before !== undefined) {
      const message = `Two sections are called ${named(id)} (numbers ${before + 1} and ${index + 1}). Give one of them another id.`;
      issues.push({ code: 'duplicate-id', path: at, message });
    } else first.set(id, index);
  });
  return issues;
}

/** Index of the section each one flows into; −1 for the blower, −2 for nowhere. */
function targets(sections: readonly Section[]): Int32Array {
  const index = new Map(sections.map(({ id }, i) => [id, i]));
  return Int32Array.from(sections, ({ into }) => (into === BLOWER ? -1 : (index.get(into) ?? -2)));
}

/** One issue for every ring of sections, told at the first of them. */
function ringIssues(sections: readonly Section[], target: Int32Array, path: string): Issue[] {
  const issues: Issue[] = [];
  const walk = new Int32Array(sections.length).fill(-1);
  for (let start = 0; start < sections.length; start++) {
    let i = start;
    while (i >= 0 && walk[i] === -1) {
      walk[i] = start;
      i = target[i]!;
    }
    if (i < 0 || walk[i] !== start) continue;
    const ring: number[] = [];
    for (let j = i; ring.length === 0 || j !== i; j = target[j]!) ring.push(j);
    const ids = ring.slice(0, 6).map((j) => named(sections[j]!.id));
    const round = `${ids.join(' → ')}${ring.length > 6 ? ' → …' : ''} → ${ids[0]}`;
    const message =
      ring.length === 1
        ? `Section ${ids[0]} flows into itself. Let it flow into the next section or into “${BLOWER}”.`
        : `These sections flow in a circle: ${round}. Let one of them flow towards “${BLOWER}”.`;
    issues.push({ code: 'flows-in-a-circle', path: `${path}/sections/${i}/into`, message });
  }
  return issues;
}

function treeIssues(sections: readonly Section[], path: string): Issue[] {
  const target = targets(sections);
  const issues = ringIssues(sections, target, path);
  const fed = new Uint8Array(sections.length);
  sections.forEach(({ id, into }, i) => {
    if (target[i]! >= 0) fed[target[i]!] = 1;
    if (target[i] !== -2) return;
    const message = `Section ${named(id)} flows into ${named(into)}, and there is no such section. Name an existing section or “${BLOWER}”.`;
    issues.push({ code: 'flows-nowhere', path: `${path}/sections/${i}/into`, message });
  });
  sections.forEach(({ id, pickup }, i) => {
    if (!fed[i] || pickup == null) return;
    const message = `Section ${named(id)} has a machine and other sections flowing into it. Give the machine a section of its own that flows into ${named(id)}.`;
    issues.push({ code: 'contradiction', path: `${path}/sections/${i}/pickup`, message });
  });
  if (issues.length === 0 && !sections.some(({ pickup }) => pickup != null)) {
    const message = `No machine is connected: no section has a "pickup". Add one to each section that starts at a machine.`;
    issues.push({ code: 'no-pickup', path: `${path}/sections`, message });
  }
  return issues;
}

type Placed = { element: Element; path: string };

/** Every element with its place in the document. */
function placedElements({ sections, discharge }: Ductwork, path: string): Placed[] {
  return [
    ...sections.flatMap(({ elements }, s) =>
      elements.map((element, e) => ({ element, path: `${path}/sections/${s}/elements/${e}` })),
    ),
    ...(discharge ?? []).map((element, e) => ({ element, path: `${path}/discharge/${e}` })),
  ];
}

/** Fields that are inside sizes of ducts, and the least that still is one [m]. */
const SIZE_FIELD = /(^d|D)iameter_m$|^inlet(Width|Height)_m$/;
const LEAST_SIZE_M = 0.001;
/** A test flow below this [m3/s] is a slip of the unit: one litre an hour. */
const LEAST_TEST_FLOW_M3_S = 2.8e-7;

/** Numbers that are above zero and still no duct. */
function sizeIssues(fields: object, path: string): Issue[] {
  return Object.entries(fields).flatMap(([field, value]): Issue[] => {
    if (typeof value === 'object' && value !== null) return sizeIssues(value, `${path}/${field}`);
    if (typeof value !== 'number') return [];
    if (SIZE_FIELD.test(field) && value < LEAST_SIZE_M) {
      const message = `${value} m is too narrow for a duct: at least 0.001 m. Is the unit right?`;
      return [{ code: 'out-of-range', path: `${path}/${field}`, message }];
    }
    if ((field === 'flow_m3_s' || field === 'cleanFlow_m3_s') && value < LEAST_TEST_FLOW_M3_S) {
      const message = `A test flow of ${value} m3/s is next to nothing. Is the unit right?`;
      return [{ code: 'out-of-range', path: `${path}/${field}`, message }];
    }
    return [];
  });
}

/**
 * Why a ductwork is impossible: doubled ids, sections into nowhere or in a circle, a machine in the middle of a trunk, no
 * machine at all, elements that cannot be. Each issue has its JSON Pointer and a sentence that says how to mend it.
 * An empty list means that `compileNetwork` will take it. Linear in the number of sections, without recursion.
 * @param path JSON Pointer of the ductwork in the document
 */
export function ductworkIssues(ductwork: Ductwork, path: string = pointer('ductwork')): Issue[] {
  const doubled = idIssues(ductwork.sections, path);
  return [
    ...doubled,
    ...(doubled.length > 0 ? [] : treeIssues(ductwork.sections, path)),
    ...placedElements(ductwork, path).flatMap(({ element, path: at }) => [
      ...sizeIssues(element, at),
      ...(elementKind(element.kind).faults?.(element) ?? []).map(({ code, field, message }) => ({
        code,
        path: `${at}/${field}`,
        message,
      })),
    ]),
  ];
}

/**
 * What is odd or assumed in a possible ductwork, as warnings: a discharge run without `exit` (`no-exit`), sections where no
 * air can start (`dead-end`), gates on trunks (`gate-on-trunk`: plans name machines, so a trunk's gate stays open), and
 * what the elements assume.
 */
export function ductworkWarnings(ductwork: Ductwork, path: string = pointer('ductwork')): Warning[] {
  const { sections, discharge } = ductwork;
  const warnings: Warning[] = [];
  if (discharge != null && discharge.length > 0 && !discharge.some(({ kind }) => kind === 'exit')) {
    const text =
      'The run behind the blower has no "exit": nothing is lost at its end. Add an exit where the air leaves it.';
    warnings.push({ code: 'no-exit', text, path: `${path}/discharge` });
  }
  const fed = new Set(sections.map(({ into }) => into));
  sections.forEach(({ id, pickup, gate }, s) => {
    if (!fed.has(id) && pickup == null) {
      const text = `Section ${named(id)} starts at no machine and nothing flows into it: it is a dead end without air.`;
      warnings.push({ code: 'dead-end', text, path: `${path}/sections/${s}` });
    }
    if (gate != null && pickup == null) {
      const text = `The gate in section ${named(id)} serves several machines. Plans name machines only, so it is taken as open.`;
      warnings.push({ code: 'gate-on-trunk', text, path: `${path}/sections/${s}/gate` });
    }
  });
  for (const { element, path: at } of placedElements(ductwork, path)) {
    for (const { code, field, text } of elementKind(element.kind).remarks?.(element) ?? []) {
      warnings.push({ code, text, path: `${at}/${field}` });
    }
  }
  return warnings;
}
