import type { Locator, Page } from 'playwright-core';

/** The page of a groove as a person meets it: found by roles and names only. */
export class GroovePage {
  readonly page: Page;
  /** How far measuring is. */
  readonly status: Locator;
  readonly verdict: Locator;

  constructor(page: Page) {
    this.page = page;
    this.status = page.getByRole('status', { name: 'Survey', exact: true });
    this.verdict = this.region('Verdict').locator('.groove-words');
  }

  /** Opens the groove of a job by the address of its bench. */
  async open(job = '/demo/penstock-seam'): Promise<this> {
    await this.page.goto(`${job}/groove`);
    await this.measured();
    return this;
  }

  async measured(): Promise<void> {
    await this.status.filter({ hasText: /^Measured\./u }).waitFor();
  }

  region(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  /** Rows of what was gauged, the head aside. */
  gauged(): Locator {
    return this.region('What was gauged')
      .getByRole('row')
      .filter({ has: this.page.getByRole('rowheader') });
  }

  /** Types numbers with the keys of the page, each into its box. */
  async enter(numbers: Readonly<Record<string, string>>): Promise<void> {
    const before = await this.gauged().count();
    const keys = this.page.getByRole('group', { name: 'Number keys' });
    for (const [box, number] of Object.entries(numbers)) {
      await this.page.getByRole('textbox', { name: box }).focus();
      for (const key of number) await keys.getByRole('button', { name: key, exact: true }).click();
    }
    await this.page.getByRole('button', { name: 'Keep this reading' }).click();
    await this.gauged().nth(before).waitFor();
    await this.measured();
  }

  /** Drops a file onto the page as a person would from another window. */
  async drop(name: string, content: Buffer): Promise<void> {
    const panel = this.region('Files measured');
    const carried = await this.page.evaluateHandle(
      ([title, base64]) => {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        const transfer = new DataTransfer();
        transfer.items.add(new File([bytes], title));
        return transfer;
      },
      [name, content.toString('base64')] as const,
    );
    await panel.dispatchEvent('dragover', { dataTransfer: carried });
    await panel.dispatchEvent('drop', { dataTransfer: carried });
  }

  /** How a file was read, in one line. */
  file(name: string): Locator {
    return this.region('Files measured').locator('summary').filter({ hasText: name });
  }

  /** Hands files to the page as a person would choose them. */
  async take(name: string, text: string): Promise<void> {
    await this.page
      .getByLabel('Measured file')
      .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  }
}
