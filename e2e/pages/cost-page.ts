import type { Locator, Page } from 'playwright-core';

/** The page of cost and time as a person meets it: found by roles and names only. */
export class CostPage {
  readonly page: Page;
  readonly result: Locator;

  constructor(page: Page) {
    this.page = page;
    this.result = page.getByRole('status', { name: 'Result' });
  }

  /** Opens the page of the demo job and waits for its cost, and for every change that is tried. */
  async open(): Promise<this> {
    await this.page.goto('/demo/penstock-seam/cost');
    await this.region('The whole job').waitFor();
    await this.tried();
    return this;
  }

  /** Waits until no change is being tried any more. */
  async tried(): Promise<void> {
    await this.region('Changes, planned anew').getByText('by the objective of the job').waitFor();
  }

  region(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  entry(name: string): Locator {
    return this.page.getByRole('textbox', { name, exact: true });
  }

  /** Rows of a table, without its head. */
  rowsOf(name: string): Locator {
    return this.region(name).getByRole('table').locator('tbody').getByRole('row');
  }
}
