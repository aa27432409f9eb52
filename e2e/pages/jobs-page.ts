import type { Locator, Page } from 'playwright-core';

/** The page of the saved jobs. */
export class JobsPage {
  readonly page: Page;
  readonly jobs: Locator;
  readonly bin: Locator;
  readonly demos: Locator;
  readonly message: Locator;

  constructor(page: Page) {
    this.page = page;
    this.jobs = page.getByRole('region', { name: 'Jobs', exact: true });
    this.bin = page.getByRole('region', { name: 'Bin', exact: true });
    this.demos = page.getByRole('region', { name: 'Demo jobs', exact: true });
    this.message = page.getByRole('status');
  }

  async open(): Promise<this> {
    await this.page.goto('/jobs');
    await this.demos.waitFor();
    return this;
  }

  /** The rows of the table, without its head. */
  rows(): Locator {
    return this.jobs.getByRole('row').filter({ has: this.page.getByRole('rowheader') });
  }

  async duplicate(title: string): Promise<void> {
    await this.jobs
      .getByRole('button', { name: `Duplicate ${title}` })
      .first()
      .click();
    await this.message.filter({ hasText: 'was duplicated' }).waitFor();
  }

  async moveToBin(title: string): Promise<void> {
    await this.jobs
      .getByRole('button', { name: `Move ${title} to the bin` })
      .first()
      .click();
    await this.message.filter({ hasText: 'is in the bin' }).waitFor();
  }

  async erase(title: string): Promise<void> {
    await this.bin.getByRole('button', { name: `Erase ${title} for good` }).click();
    const dialog = this.page.getByRole('dialog', { name: 'Erase for good?' });
    await dialog.getByRole('button', { name: 'Erase for good' }).click();
    await this.message.filter({ hasText: 'is erased' }).waitFor();
  }

  async restore(title: string): Promise<void> {
    await this.bin.getByRole('button', { name: `Restore ${title}` }).click();
    await this.message.filter({ hasText: 'is back' }).waitFor();
  }
}
