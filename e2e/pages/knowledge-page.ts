import type { Locator, Page } from 'playwright-core';

/** The page of what the shop knows, as a person meets it: found by roles and names only. */
export class KnowledgePage {
  readonly page: Page;
  readonly entries: Locator;
  readonly picture: Locator;
  readonly state: Locator;

  constructor(page: Page) {
    this.page = page;
    this.entries = page.getByRole('region', { name: 'What was tried and gauged', exact: true });
    this.picture = page.getByRole('img', { name: /^Predicted band and reading/u });
    this.state = page.getByRole('status', { name: 'Save state' });
  }

  async open(): Promise<this> {
    await this.page.goto('/knowledge');
    await this.picture.waitFor();
    return this;
  }

  row(id: string): Locator {
    return this.entries.getByRole('row').filter({ has: this.page.getByRole('rowheader', { name: id }) });
  }

  /** Enters a trial: what the fields hold already stays. */
  async enterTrial(fields: Readonly<Record<string, string>>): Promise<void> {
    await this.page.getByRole('button', { name: 'Enter a trial' }).click();
    await this.fill(fields);
    await this.page.getByRole('button', { name: 'Enter', exact: true }).click();
    await this.state.filter({ hasText: 'is entered' }).waitFor();
  }

  async fill(fields: Readonly<Record<string, string>>): Promise<void> {
    for (const [label, text] of Object.entries(fields)) {
      await this.page.getByRole('textbox', { name: new RegExp(`^${label}`, 'u') }).fill(text);
    }
  }

  async takeOut(id: string, reason: string): Promise<void> {
    await this.page.getByRole('button', { name: `Take ${id} out` }).click();
    await this.page.getByLabel('Reason').fill(reason);
    await this.page.getByRole('button', { name: 'Take out', exact: true }).click();
    await this.state.filter({ hasText: 'is taken out' }).waitFor();
  }
}
