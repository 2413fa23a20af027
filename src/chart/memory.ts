/**
 * What was worked out for a photo and may be asked again: `memory(key, make)` answers what was made under this key
 * before. Keys name everything the value depends on, beside the photo.
 */
export type Memory = <T>(key: string, make: () => T) => T;

/** A memory that keeps the last values. What ended in an error is not kept. @param kept how many */
export function createMemory(kept: number): Memory {
  const values = new Map<string, unknown>();
  return <T>(key: string, make: () => T): T => {
    const value = values.has(key) ? (values.get(key) as T) : make();
    values.delete(key);
    values.set(key, value);
    if (value instanceof Promise) value.catch(() => values.delete(key));
    for (const old of values.keys()) {
      if (values.size <= kept) break;
      values.delete(old);
    }
    return value;
  };
}
