/** A whole number as typed, in Western, Arabic or Urdu digits; null where it is none. */
export function readCount(text: string): number | null {
  const western = text
    .trim()
    .replace(/[\u0660-\u0669]/g, (d) => String(d.charCodeAt(0) - 0x660))
    .replace(/[\u06f0-\u06f9]/g, (d) => String(d.charCodeAt(0) - 0x6f0));
  return /^\d{1,4}$/.test(western) ? Number(western) : null;
}
