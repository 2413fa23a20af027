/** JSON Pointers (RFC 6901) into a document that is never changed in place. */

export const steps = (pointer: string): string[] =>
  pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map((s) => s.replaceAll('~1', '/').replaceAll('~0', '~'));

/** The value at a pointer, or undefined where the way there ends. */
export function valueAt(root: unknown, pointer: string): unknown {
  let here: unknown = root;
  for (const step of steps(pointer)) {
    if (here === null || typeof here !== 'object') return undefined;
    here = Array.isArray(here)
      ? here[step === '-' ? here.length : Number(step)]
      : (here as Record<string, unknown>)[step];
  }
  return here;
}

/** A copy with the value put there; objects missing on the way are made, `undefined` takes an object's key away. */
export function withValueAt<T>(root: T, pointer: string, value: unknown): T {
  return put(root, steps(pointer), value) as T;
}

function put(here: unknown, way: string[], value: unknown): unknown {
  const [step, ...rest] = way;
  if (step === undefined) return value;
  if (Array.isArray(here)) {
    const copy: unknown[] = [...here];
    const index = step === '-' ? copy.length : Number(step);
    copy[index] = put(copy[index], rest, value);
    return copy;
  }
  const copy = { ...((here ?? {}) as Record<string, unknown>) };
  const inner = put(copy[step], rest, value);
  if (inner === undefined) delete copy[step];
  else copy[step] = inner;
  return copy;
}

/** Texts kept by pointer, after one entry of an array was taken away: its own are dropped, later ones move up. */
export function textsWithout(
  texts: Record<string, string>,
  arrayPointer: string,
  index: number,
): Record<string, string> {
  const prefix = `${arrayPointer}/`;
  const kept: Record<string, string> = {};
  for (const [pointer, text] of Object.entries(texts)) {
    if (!pointer.startsWith(prefix)) {
      kept[pointer] = text;
      continue;
    }
    const [head = '', ...rest] = pointer.slice(prefix.length).split('/');
    const at = Number(head);
    if (at === index) continue;
    kept[at > index ? [prefix + (at - 1), ...rest].join('/') : pointer] = text;
  }
  return kept;
}
