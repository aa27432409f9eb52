import type { Locator, Page } from 'playwright-core';

/** The frame around every page: the places, and the pages of the place. */
export class Frame {
  readonly page: Page;
  readonly head: Locator;
  /** The way to what the work goes on with. */
  readonly next: Locator;

  constructor(page: Page) {
    this.page = page;
    this.head = page.getByRole('banner');
    this.next = page.getByRole('navigation', { name: 'The way of the work' }).getByRole('link');
  }

  /** The way to a place, with where the job stands in it. */
  place(name: 'Plan' | 'Check' | 'Set up' | 'Run' | 'Groove' | 'Shop'): Locator {
    return this.page
      .getByRole('navigation', { name: 'Places' })
      .getByRole('link', { name: new RegExp(`^${name}`, 'u') });
  }

  /** The way to a page of the place that is shown. */
  tab(name: string): Locator {
    return this.page
      .getByRole('navigation', { name: 'Pages of this place' })
      .getByText(name, { exact: true });
  }
}
