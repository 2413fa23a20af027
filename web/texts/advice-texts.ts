type Values = Record<string, string>;

/** Advice in a language other than the core's English, made from its numbers as `assess` names them. */
export type AdviceTexts = {
  measurements: Record<string, (v: Values) => string>;
  changes: Record<string, (v: Values) => string>;
  outcome: (v: Values) => string;
};
