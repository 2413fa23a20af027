import type { Section } from '../../../src/job/types.ts';

/**
 * A line of sections that runs on without turning off: from a machine to where it melts into a bigger line or to the
 * blower. `branches[i]` are the lines that melt in where `sections[i]` begins.
 */
export type Line = { sections: Section[]; branches: Line[][] };

/** A section of no length: where several mains meet at the blower's inlet. */
const MEETING: Section = { id: '', into: 'blower', elements: [] };

export type LineTree = {
  root: Line | null;
  /** sections that reach no blower: drawn nowhere, named in words */ unplaced: string[];
};

/**
 * The ductwork as lines and what melts into them. At a junction the child with most machines behind it runs straight
 * on, so lines nest no deeper than log2 of the machines; among equals the first one in the list does.
 */
export function lineTree(sections: readonly Section[]): LineTree {
  const into = new Map<string, Section[]>();
  for (const section of sections) into.set(section.into, [...(into.get(section.into) ?? []), section]);
  const reached: Section[] = [];
  const seen = new Set<string>();
  const queue = [...(into.get('blower') ?? [])];
  for (let section = queue.shift(); section; section = queue.shift()) {
    if (seen.has(section.id)) continue;
    seen.add(section.id);
    reached.push(section);
    queue.push(...(into.get(section.id) ?? []));
  }
  const machines = new Map<string, number>();
  for (const section of reached.toReversed()) {
    const behind = (into.get(section.id) ?? []).reduce((sum, child) => sum + (machines.get(child.id) ?? 0), 0);
    machines.set(section.id, Math.max(1, behind));
  }
  const lineOf = (last: Section): Line => {
    const line: Line = { sections: [last], branches: [[]] };
    for (let head = last; ;) {
      const children = into.get(head.id) ?? [];
      const straight = children.reduce<Section | null>(
        (best, child) => (best && machines.get(best.id)! >= machines.get(child.id)! ? best : child),
        null,
      );
      if (!straight) return line;
      line.branches[0] = children.filter((child) => child !== straight).map(lineOf);
      line.sections.unshift(straight);
      line.branches.unshift([]);
      head = straight;
    }
  };
  const mains = into.get('blower') ?? [];
  const unplaced = sections.filter((section) => !seen.has(section.id)).map((section) => section.id);
  if (mains.length < 2) return { root: mains[0] ? lineOf(mains[0]) : null, unplaced };
  const straight = mains.reduce((best, main) => (machines.get(best.id)! >= machines.get(main.id)! ? best : main));
  const root = lineOf(straight);
  root.sections.push(MEETING);
  root.branches.push(mains.filter((main) => main !== straight).map(lineOf));
  return { root, unplaced };
}
