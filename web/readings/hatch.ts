/** Short slanted strokes under a line of ground, as a draughtsman marks the floor. */
export function hatchUnder(from: number, to: number, y: number): string {
  let path = '';
  for (let x = from + 4; x <= to; x += 11) path += `M${x} ${y + 1}l-6 7`;
  return path;
}
