/** Whether a value is nested deeper than this many levels; a value that holds itself is. Each part is looked at once. */
export function nestedDeeper(value: unknown, most: number): boolean {
  return heightOf(value, most, new Map()) > most;
}

function heightOf(value: unknown, room: number, known: Map<object, number>): number {
  if (typeof value !== 'object' || value === null) return 0;
  if (room < 0) return Number.POSITIVE_INFINITY;
  const before = known.get(value);
  if (before !== undefined) return before;
  // While its parts are looked at, a value counts as endless: whoever meets it again holds itself.
  known.set(value, Number.POSITIVE_INFINITY);
  let height = 0;
  for (const part of Object.values(value)) height = Math.max(height, heightOf(part, room - 1, known));
  known.set(value, height + 1);
  return height + 1;
}
