import type { Locator, Page } from 'playwright-core';
import { seenText } from '../seen-text.ts';

/** The page of heat as a person meets it: found by roles and names only. */
export class HeatPage {
  readonly page: Page;
  readonly status: Locator;
  readonly saveState: Locator;
  /** The time that is scrubbed. */
  readonly moment: Locator;
  /** The section at the moment looked at. */
  readonly section: Locator;
  readonly play: Locator;

  constructor(page: Page) {
    this.page = page;
    this.status = page.getByRole('status', { name: 'Heat', exact: true });
    this.saveState = page.getByRole('status', { name: 'Save state' });
    this.moment = page.getByRole('slider', { name: 'Moment' });
    this.section = page.getByRole('img', { name: /^Temperature in the section\./u });
    this.play = page.getByRole('button', { name: /^(Play|Pause)$/u });
  }

  /** Opens the heat of a demo job and waits for an answer, quick or refined. */
  async open(demo = 'defect-pocket'): Promise<this> {
    await this.page.goto(`/demo/${demo}/heat`);
    await this.answered();
    return this;
  }

  /** Waits until an answer is shown: a quick look says all that a refined one does. */
  async answered(): Promise<void> {
    await this.status.filter({ hasText: /^(A quick look;|Refined)/u }).waitFor();
  }

  /** Waits until the refined answer is shown. */
  async refined(): Promise<void> {
    await this.status.filter({ hasText: /^Refined/u }).waitFor();
  }

  /** Does something and waits until it is solved anew. It watches from before the act: a solve can be over within a frame. */
  async solvedAnew(act: () => Promise<void>): Promise<void> {
    const solving = await this.status.evaluateHandle((status) => ({
      seen: new Promise<void>((resolve) => {
        const look = (): void => {
          if (status.textContent?.startsWith('Solving')) resolve();
        };
        new MutationObserver(look).observe(status, { childList: true, characterData: true, subtree: true });
      }),
    }));
    await act();
    await solving.evaluate(({ seen }) => seen);
    await this.answered();
  }

  region(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  field(name: string): Locator {
    return this.page.getByRole('textbox', { name, exact: true });
  }

  /** What a figure says: its number and its note. */
  async figure(name: string): Promise<string> {
    const term = this.page.getByRole('term').filter({ hasText: new RegExp(`^${name}$`, 'u') });
    return seenText(term.locator('xpath=following-sibling::dd'));
  }

  /** The picture in words. */
  async described(): Promise<string> {
    return (await this.section.getAttribute('aria-label')) ?? '';
  }
}
