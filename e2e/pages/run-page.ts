import type { Locator, Page } from 'playwright-core';

/** The page of a run as a person meets it: found by roles and names only. */
export class RunPage {
  readonly page: Page;
  readonly status: Locator;
  /** The cursor of the strip. */
  readonly cursor: Locator;

  constructor(page: Page) {
    this.page = page;
    this.status = page.getByRole('status', { name: 'Review', exact: true });
    this.cursor = page.getByRole('slider', { name: /^(Place along the seam|Time of the log)$/u });
  }

  /** Opens the run of a saved job, by the address of its bench. */
  async openSaved(job: string): Promise<this> {
    await this.page.goto(`${job}/run`);
    await this.region('Runs of this job').waitFor();
    return this;
  }

  /** The row of a run among those that are kept, by its name. */
  keptRun(name: string): Locator {
    return this.region('Runs of this job').getByRole('row').filter({ hasText: name });
  }

  /** Opens the run of a demo job, which plays a rehearsal by itself. */
  async open(demo = 'defect-pocket'): Promise<this> {
    await this.page.goto(`/demo/${demo}/run`);
    await this.reviewed();
    return this;
  }

  async reviewed(name = ''): Promise<void> {
    await this.status.filter({ hasText: new RegExp(`${name}.*: reviewed$`, 'u') }).waitFor();
  }

  /** Hands a log to the page as a person would choose it. */
  async take(name: string, text: string): Promise<void> {
    await this.page
      .getByLabel('Log to open')
      .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  }

  region(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  /** Rows of the table of events. */
  events(): Locator {
    return this.region('Events').getByRole('row');
  }
}
