import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { API_PATHS, fillPath, savedJobSchema, savedKitSchema } from '@furrow/contract';
import type { Locator, Page } from 'playwright-core';

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
    const job = savedJobSchema.parse(
      await sent(this.page, url + API_PATHS.jobs, 'POST', { text: await example('penstock-seam') }),
    );
    if (kit) {
      const body = { text: await example('yard-kit'), based_on: 0 };
      savedKitSchema.parse(await sent(this.page, url + API_PATHS.kit, 'PUT', body));
    }
    return this.open(`/jobs/${job.id}/commission`);
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

async function example(name: string): Promise<string> {
  return readFile(fileURLToPath(new URL(`../../examples/${name}.yaml`, import.meta.url)), 'utf8');
}

async function sent(page: Page, address: string, method: string, body: object): Promise<unknown> {
  return (await page.request.fetch(address, { method, data: body })).json();
}
