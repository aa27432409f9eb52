/** How many hold the content of a name and save it by themselves. */
const holders = new Map<string, number>();

/** Says that what is kept under a name is saved by whoever calls, until the returned function is called. */
export function holdDraft(name: string): () => void {
  holders.set(name, (holders.get(name) ?? 0) + 1);
  return () => void holders.set(name, (holders.get(name) ?? 1) - 1);
}

/** Whether a page is open that saves what is kept under a name by itself. */
export function isHeld(name: string): boolean {
  return (holders.get(name) ?? 0) > 0;
}
