import { describe, expect, it } from 'vitest';
import { CommissionPage } from './pages/commission-page.ts';
import { Frame } from './pages/frame.ts';
import { GroovePage } from './pages/groove-page.ts';
import { RunPage } from './pages/run-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

describe.skipIf(NO_BROWSER)('the demo', () => {
  const stage = useStage();

  it('leads by “next” from the wanted groove to the proven one, and each page has something to show', async () => {
    const { page } = await stage.visit();
    await page.goto('/');
    const frame = new Frame(page);
    for (const end of ['supply', 'heat', 'hazards', 'papers', 'commission']) {
      await frame.next.click();
      await page.waitForURL(`**/demo/penstock-seam/${end}`);
    }
    const rig = new CommissionPage(page);
    await rig.progress
      .filter({ hasText: /^(\d+) of \1 connections.* (\d+) of \2 checks made, none/u })
      .waitFor();
    expect(await seenText(page.getByRole('main'))).toContain('The rig of the demo is invented');
    await frame.next.click();
    const run = new RunPage(page);
    await run.reviewed('Run of the demo');
    const told = await seenText(run.region('Verdict'));
    expect(told).toContain('A rehearsal: these readings were made up');
    expect(told).toMatch(/From 3\.6\d+ m to 3\.6\d+ m the arc was out 2\.0 s in pass \d/u);
    await frame.next.click();
    const groove = new GroovePage(page);
    await groove.measured();
    expect(await seenText(groove.verdict)).toMatch(/fails/u);
    expect(await seenText(groove.region('Stretches'))).toMatch(/3\.\d+ m\s[^\n]*fails/u);
    for (const end of ['record', 'knowledge', 'new']) {
      await frame.next.click();
      await page.waitForURL(`**/${end}`);
    }
  });

  it('is put back as it was, and what was made up for it does not go into a job of one’s own', async () => {
    const { page } = await stage.visit();
    const rig = await new CommissionPage(page).open('/demo/penstock-seam/commission');
    const before = await rig.reading('Stick-out').inputValue();
    await rig.reading('Stick-out').fill('60 mm');
    await rig.saveState.filter({ hasText: /^kept in this browser/u }).waitFor();
    await rig.progress.filter({ hasText: /1 of them not/u }).waitFor();
    await page.getByRole('button', { name: 'Put the demo back' }).click();
    await rig.progress.filter({ hasText: /none of them off/u }).waitFor();
    expect(await rig.reading('Stick-out').inputValue()).toBe(before);
    await rig.reading('Stick-out').fill('90 mm');
    await page.getByRole('button', { name: 'Save the job with them' }).click();
    // the demo's kit falls away with the demo, and the connections with the kit
    await rig.progress.filter({ hasText: /^1 of \d+ checks/u }).waitFor();
    expect(await page.getByRole('button', { name: 'Put the demo back' }).count()).toBe(0);
    await page.getByRole('radio', { name: 'inch' }).check();
    expect(await rig.reading('Stick-out').inputValue()).toBe('90 mm');
  });
});
