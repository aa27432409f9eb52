import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { RunPage } from './pages/run-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

/** A log as a logger with decimal commas writes it: the arc is out for a second at 10 s. */
function germanLog(): string {
  const comma = (value: number): string => value.toFixed(2).replace('.', ',');
  const lines = ['Zeit [s];Kanal 1 [V];Strom [A];Fahrt [mm/min]'];
  for (let n = 0; n < 300; n += 1) {
    const t = n / 10;
    const burns = t >= 2 && t < 28 && !(t >= 10 && t < 11);
    const wobble = Math.sin(n);
    const volts = burns ? 42 + wobble : 75;
    lines.push([t, volts, burns ? 600 + 5 * wobble : 0, t >= 2 && t < 28 ? 420 : 0].map(comma).join(';'));
  }
  return `${lines.join('\n')}\n`;
}

describe.skipIf(NO_BROWSER)('the run', () => {
  const stage = useStage();

  it('opens a demo job with a rehearsal, says so, and tells what to do', async () => {
    const { page } = await stage.visit();
    const run = await new RunPage(page).open();
    const verdict = await seenText(run.region('Verdict'));
    expect(verdict).toContain('A rehearsal: these readings were made up');
    expect(verdict).toMatch(/From 0\.\d{3} m to 0\.\d{3} m the arc was out 0\.9 s in pass \d: recut/u);
    expect(await seenText(run.events().filter({ hasText: 'Arc out' }))).toMatch(/%\)/u);
  });

  it('goes along the strip with the keys and shows an event by its button', async () => {
    const { page } = await stage.visit();
    const run = await new RunPage(page).open();
    await run.cursor.press('Home');
    const first = await run.cursor.getAttribute('aria-valuetext');
    expect(first).toMatch(/^-?\d\.\d{3} m, pass 1, depth predicted .* mm/u);
    await run.cursor.press('ArrowRight');
    expect(await run.cursor.getAttribute('aria-valuetext')).not.toBe(first);
    await run.events().filter({ hasText: 'Spike' }).getByRole('button').click();
    await page.getByRole('slider', { name: 'Time of the log' }).waitFor();
    await page.getByRole('button', { name: 'Whole' }).click();
    await page.getByRole('button', { name: 'Along the seam' }).click();
    await page.getByRole('slider', { name: 'Place along the seam' }).waitFor();
  });

  it('reads a log that is handed to it, shows how, and reads it again as corrected', async () => {
    const { page } = await stage.visit();
    const run = await new RunPage(page).open();
    await run.take('bay-2.csv', germanLog());
    await run.reviewed('bay-2');
    expect(await seenText(run.region('Verdict'))).not.toContain('rehearsal');
    expect(await run.events().filter({ hasText: 'Arc out' }).count()).toBe(1);
    const details = page.getByText('How the log was read: 300 rows read');
    await details.click();
    const current = page.getByRole('combobox', { name: 'Column 3 is' });
    expect(await current.inputValue()).toBe('current');
    await current.selectOption('none');
    await page.getByText('Current and energy: the log has no current.').waitFor();
    await run.reviewed('bay-2');
  });

  it('lets a person say what the columns of a file without header are', async () => {
    const { page } = await stage.visit();
    const run = await new RunPage(page).open();
    await run.take('bare.csv', germanLog().split('\n').slice(1).join('\n'));
    await run.status.filter({ hasText: 'bare.csv cannot be read.' }).waitFor();
    for (const [column, quantity, unit] of [
      [1, 'time', 's'],
      [2, 'voltage', 'V'],
      [3, 'current', 'A'],
      [4, 'travel', 'mm/min'],
    ] as const) {
      await page.getByRole('combobox', { name: `What column ${column} is` }).selectOption(quantity);
      await page.getByRole('textbox', { name: `Unit of column ${column}` }).fill(unit);
    }
    await page.getByRole('button', { name: 'Read it so' }).click();
    await run.reviewed('bare');
    expect(await run.events().filter({ hasText: 'Arc out' }).count()).toBe(1);
  });

  it('says why a file cannot be read, and shows nothing of it', async () => {
    const { page } = await stage.visit();
    const run = await new RunPage(page).open();
    await run.take('picture.png', '\u0000\u0001\u0002\u0003');
    await run.status.filter({ hasText: 'picture.png cannot be read.' }).waitFor();
    expect(await run.region('Verdict').count()).toBe(0);
  });

  it('has nothing that the accessibility rules find', async () => {
    const { page } = await stage.visit();
    await new RunPage(page).open();
    const violations = await brokenRules(page);
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
  });
});
