/** Where a new field goes among those a group has, so that the file keeps the order of the form. */
export function orderedIndex(keys: readonly string[], order: readonly string[], name: string): number {
  const rank = order.indexOf(name);
  if (rank < 0) return keys.length;
  const next = keys.findIndex((key) => order.indexOf(key) > rank);
  return next < 0 ? keys.length : next;
}
