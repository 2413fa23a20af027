/** Doubts that the page asks about in a row of their own. */
export const isAskedAnyway = (code: string): boolean => code === 'largest-values';
