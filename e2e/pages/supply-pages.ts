import type { Locator, Page } from 'playwright-core';

/** The pages of kit, power and air, and bay as a person meets them: found by roles and names only. */
export class SupplyPages {
  readonly page: Page;
  readonly saveState: Locator;
  readonly result: Locator;
  readonly title: Locator;

  constructor(page: Page) {
    this.page = page;
    this.saveState = page.getByRole('status', { name: 'Save state' });
    this.result = page.getByRole('status', { name: 'Result' });
    this.title = page.getByRole('heading', { level: 1 });
  }

  /** Begins the shop's kit with the demo kit and saves it. */
  async saveDemoKit(): Promise<void> {
    await this.page.goto('/kit');
    await this.button('Begin with Penstock yard, bay 2').click();
    await this.button('Save').click();
    await this.saveState.filter({ hasText: 'saved as revision 1' }).waitFor();
  }

  /** Opens a page of the demo job, or of another one by the address of its bench, and waits for its plan. */
  async open(room: 'supply' | 'bay', job = '/demo/penstock-seam'): Promise<this> {
    await this.page.goto(`${job}/${room}`);
    await this.planned();
    return this;
  }

  /** Waits until what is shown belongs to job and kit as they stand. */
  async planned(): Promise<void> {
    await this.result.filter({ hasText: /^(Planned\.|No plan holds for this job\.)$/u }).waitFor();
  }

  region(name: string | RegExp): Locator {
    return this.page.getByRole('region', typeof name === 'string' ? { name, exact: true } : { name });
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
  }

  drawing(name: RegExp): Locator {
    return this.page.getByRole('img', { name });
  }

  /** Handle of something on the plan of the bay. */
  handle(title: string): Locator {
    return this.button(new RegExp(`^Move ${title}: `, 'u'));
  }

  /** Entry of a place that is typed. */
  place(title: string, way: 'across' | 'up'): Locator {
    return this.page.getByRole('textbox', { name: `${title}, ${way}`, exact: true });
  }

  /** Rows of a table, without its head. */
  rowsOf(name: string | RegExp): Locator {
    return this.region(name)
      .getByRole('row')
      .filter({ has: this.page.getByRole('rowheader') });
  }
}
