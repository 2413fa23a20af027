/**
 * Asks a slow answerer about the newest thing only: while one question is out, later ones replace each other,
 * and the last is asked when the answer is back. Every answer is handed on; the caller keeps the last good one.
 */
export function createLatest<Q, A>(
  ask: (question: Q) => Promise<A>,
  onAnswer: (answer: A, question: Q, more: boolean) => void,
  onTrouble: (error: unknown) => void,
) {
  let waiting: { question: Q } | null = null;
  let busy = false;

  async function work(): Promise<void> {
    busy = true;
    while (waiting) {
      const { question } = waiting;
      waiting = null;
      try {
        const answer = await ask(question);
        onAnswer(answer, question, waiting !== null);
      } catch (error) {
        onTrouble(error);
      }
    }
    busy = false;
  }

  return {
    want(question: Q): void {
      waiting = { question };
      if (!busy) void work();
    },
    isBusy: (): boolean => busy,
  };
}
