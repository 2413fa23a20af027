/** Letters and digits of any script stay, everything a file system might stumble over becomes a dash. */
export const fileName = (name: string): string =>
  name
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80) || 'job';
