/** Runs tasks of one name one after the other; tasks of different names don't wait for each other. */
export function createTurns() {
  const last = new Map<string, Promise<unknown>>();

  return function inTurn<T>(name: string, task: () => Promise<T>): Promise<T> {
    const before = last.get(name) ?? Promise.resolve();
    const mine = before.then(task, task);
    const settled = mine
      .catch(() => undefined)
      .then(() => {
        if (last.get(name) === settled) last.delete(name);
      });
    last.set(name, settled);
    return mine;
  };
}
