import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { seenText } from '../seen-text.ts';

/** A file that the page handed out. */
export interface HandedOut {
  readonly name: string;
  readonly bytes: Buffer;
}

/** The bench as a person meets it: found by roles and names only. */
export class BenchPage {
  readonly page: Page;
  readonly result: Locator;
  readonly saveState: Locator;
  readonly section: Locator;
  readonly strip: Locator;
  readonly cursor: Locator;
  readonly text: Locator;
  readonly summary: Locator;
  readonly refusal: Locator;
  readonly title: Locator;

  constructor(page: Page) {
    this.page = page;
    this.result = page.getByRole('status', { name: 'Result' });
    this.saveState = page.getByRole('status', { name: 'Save state' });
    this.section = page.getByRole('img', { name: /^Section of the groove/u });
    this.strip = page.getByRole('region', { name: 'Seam strip' }).getByRole('img');
    this.cursor = page.getByRole('slider', { name: 'Place along the seam' });
    this.text = page.getByRole('textbox', { name: 'Job file as text' });
    this.summary = page.getByRole('region', { name: /mistake/u });
    this.refusal = page.getByRole('region', { name: 'No plan holds' });
    this.title = page.getByRole('heading', { level: 1 });
  }

  /** Opens an address of the bench and waits for the plan. */
  async open(path = '/'): Promise<this> {
    await this.page.goto(path);
    await this.planned();
    return this;
  }

  /** Waits until the result shown belongs to the job as it stands. */
  async planned(): Promise<void> {
    await this.result.filter({ hasText: /^Planned\.$/u }).waitFor();
  }

  /** Does something that changes the job and waits until it is planned anew, or refused. */
  async replanned(change: () => Promise<unknown>): Promise<void> {
    const before = await this.revision();
    await change();
    await this.region('What this rests on').getByText(before).waitFor({ state: 'detached' });
    await this.result.filter({ hasText: /^(Planned\.|No plan holds for this job\.)$/u }).waitFor();
  }

  /** Revision of the job that the shown result belongs to. */
  async revision(): Promise<string> {
    return seenText(this.region('What this rests on').getByRole('code').first());
  }

  region(name: string): Locator {
    return this.page.getByRole('region', { name, exact: true });
  }

  /** A group of the form, opened. */
  async group(title: string): Promise<Locator> {
    const heading = this.page.getByRole('heading', { name: title, exact: true });
    const form = this.page.getByRole('form', { name: 'Job' });
    const group = form.getByRole('group').filter({ has: heading }).last();
    if ((await group.getAttribute('open')) === null)
      await group.getByRole('heading', { name: title, exact: true }).click();
    return group;
  }

  /** A field of the form by the name of its group and its own. */
  async field(group: string, name: string): Promise<Locator> {
    const within = await this.group(group);
    const one = { name, exact: true };
    return within.getByRole('textbox', one).or(within.getByRole('combobox', one));
  }

  /** Rows of a table of the result, without its head. */
  rowsOf(name: string): Locator {
    return this.region(name)
      .getByRole('row')
      .filter({ has: this.page.getByRole('rowheader') });
  }

  /** What the page says beside a field that is wrong. */
  async explanation(field: Locator): Promise<string> {
    const ids = (await field.getAttribute('aria-describedby')) ?? '';
    return this.page.evaluate(
      (list) =>
        list
          .split(' ')
          .map((id) => document.getElementById(id))
          .filter((node) => node?.checkVisibility())
          .map((node) => node?.textContent)
          .join(' '),
      ids,
    );
  }

  /** Replaces a part of the job's text in the text view. */
  async edit(part: string, by: string): Promise<void> {
    const whole = await this.fileText();
    await this.text.fill(whole.replace(part, by));
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
  }

  tab(name: 'Form' | 'Text'): Locator {
    return this.page.getByRole('tab', { name });
  }

  /** A big number of the set-up, without what stands beside it. */
  async figure(name: string): Promise<string> {
    const term = this.page.getByRole('term').filter({ hasText: new RegExp(`^${name}$`, 'u') });
    const words = await seenText(this.page.getByRole('definition').and(term.locator('~ *')));
    return words.split('\n')[0] ?? '';
  }

  /** Name of the section's drawing, which says in words what it shows. */
  async sectionWords(): Promise<string> {
    return (await this.section.getAttribute('aria-label')) ?? '';
  }

  /** What is written in the seam strip's drawing. */
  async seamStripWords(): Promise<string> {
    return (await this.strip.textContent()) ?? '';
  }

  isFocused(locator: Locator): Promise<boolean> {
    return locator.evaluate((node) => node === document.activeElement);
  }

  /** Presses a key until something has the focus; fails where the keys do not lead there. */
  async goTo(target: Locator, key: 'Tab' | 'Shift+Tab'): Promise<void> {
    for (let presses = 0; presses < 150; presses += 1) {
      if (await this.isFocused(target)) return;
      await this.page.keyboard.press(key);
    }
    throw new Error(`${key} does not lead to ${target}`);
  }

  /** Saves and waits for the store's word. */
  async save(revision: number): Promise<void> {
    await this.button('Save').click();
    await this.saveState.filter({ hasText: `saved as revision ${revision}` }).waitFor();
  }

  /** Presses something that hands out a file. */
  async handedOut(press: Locator): Promise<HandedOut> {
    const coming = this.page.waitForEvent('download');
    await press.click();
    const download = await coming;
    const name = download.suggestedFilename();
    // the browser belongs to all tests, which reach its files through it alone
    const folder = await mkdtemp(join(tmpdir(), 'furrow-handed-out-'));
    try {
      const path = join(folder, 'file');
      await download.saveAs(path);
      return { name, bytes: await readFile(path) };
    } finally {
      await rm(folder, { recursive: true });
    }
  }

  /** Text of the job file as the text view shows it. */
  async fileText(): Promise<string> {
    await this.tab('Text').click();
    return this.text.inputValue();
  }
}
