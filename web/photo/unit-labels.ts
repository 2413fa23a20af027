/** How charts print a unit that the table calls otherwise: shown beside its name, so that it is found at a glance. */
const ALSO: Record<string, string> = {
  'mm water': 'mm WG, mm H₂O, mm WS',
  'in water': 'in. WG, in. H₂O',
  'in Hg': 'in. Hg',
  CFM: 'CFM, ft³/min',
  HP: 'HP, BHP',
  PS: 'PS, CV',
  '1': '0 … 1',
};

export const unitLabel = (unit: string): string => ALSO[unit] ?? unit;
