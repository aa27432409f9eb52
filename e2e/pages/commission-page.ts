import { API_PATHS, fillPath } from '@furrow/contract';
import type { Locator, Page } from 'playwright-core';
import { saveDemoJob, saveDemoKit } from '../saved-demo.ts';

/** The page of the rig as a person meets it: found by roles and names only. */
export class CommissionPage {
  readonly page: Page;
  readonly saveState: Locator;
  readonly progress: Locator;
  readonly faults: Locator;
  readonly causes: Locator;

  constructor(page: Page) {
    this.page = page;
    this.saveState = page.getByRole('status', { name: 'Save state' });
    this.progress = page.getByRole('status', { name: 'Progress' });
    this.faults = page.getByRole('region', { name: 'Faults', exact: true });
    this.causes = page.getByRole('region', { name: 'Likeliest causes' });
  }

  /** Saves the demo job, and the demo kit where asked for, and opens the page of its rig. */
  async start(url: string, kit: boolean): Promise<this> {
    const job = await saveDemoJob(this.page, url);
    if (kit) await saveDemoKit(this.page, url);
    return this.open(`${job}/commission`);
  }

  async open(path: string): Promise<this> {
    await this.page.goto(path);
    await this.page.getByRole('heading', { name: 'Checks before the first arc' }).waitFor();
    return this;
  }

  /** Id of the job that is shown. */
  get job(): string {
    return new URL(this.page.url()).pathname.split('/')[2] ?? '';
  }

  /** Address of the record as the server keeps it. */
  get recordPath(): string {
    return fillPath(API_PATHS.jobCommissioning, { id: this.job });
  }

  region(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  /** The field for the reading of a check. */
  reading(check: string): Locator {
    return this.page.getByRole('textbox', { name: `Reading, ${check}`, exact: true });
  }

  verdict(check: string): Locator {
    return this.page.getByRole('status', { name: `Verdict, ${check}`, exact: true });
  }

  /** Presses Save now and waits for the store's word. */
  async save(): Promise<void> {
    await this.page.getByRole('button', { name: 'Save now' }).click();
    await this.saveState.filter({ hasText: /^saved with the job/u }).waitFor();
  }
}
