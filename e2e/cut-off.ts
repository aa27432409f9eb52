import type { Page } from 'playwright-core';

/**
 * What is too wide for the screen: the page itself, and tables that show only a part of their columns. Lists of a form are left
 * out: an entry is a column there, and their heads stay in sight.
 */
export async function cutOff(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const wide = document.documentElement.scrollWidth > innerWidth ? ['page'] : [];
    const tables = [...document.querySelectorAll('.scroll-x:not(.electrodes > *)')]
      .filter((box) => box.scrollWidth > box.clientWidth + 1)
      .map((box) => box.getAttribute('aria-label') ?? '');
    return [...wide, ...tables];
  });
}
