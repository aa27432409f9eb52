import type { Locator } from 'playwright-core';

/** Text as a person sees it: without what is hidden, and whatever kind of space binds a unit to its number. */
export async function seenText(locator: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: text content would hold hidden text too
  return (await locator.innerText()).replaceAll('\u00a0', ' ');
}
