import type { Locator } from 'playwright-core';

/** Text as a person sees it: without what is hidden. */
export function seenText(locator: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: text content would hold hidden text too
  return locator.innerText();
}
