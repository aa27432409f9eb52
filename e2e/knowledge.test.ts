import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { BenchPage } from './pages/bench-page.ts';
import { KnowledgePage } from './pages/knowledge-page.ts';
import { saveDemoJob } from './saved-demo.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const CUT = { Electrode: '12.7', Current: '850', Travel: '800', 'Arc voltage': '42', Length: '300' };

describe.skipIf(NO_BROWSER)('what this shop knows', () => {
  const stage = useStage();

  it('is invented at first and says so; a trial entered is the shop’s own, and marks what rests on less', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet', theme: 'dark' });
    const job = await saveDemoJob(page, url);
    const shop = await new KnowledgePage(page).open();
    await page.getByText('No cut of it was ever made').waitFor();
    await shop.enterTrial({ ...CUT, 'Name of the shop': 'bay 2', 'Depth readings': '11.6 12.1 11,9' });
    await page.getByRole('heading', { level: 1, name: 'bay 2' }).waitFor();
    expect(await seenText(shop.row('t-01'))).toContain('11.6 to 12.1 mm (3)');
    const violations = await brokenRules(page);
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);

    await new BenchPage(page).open(job);
    const rests = page.getByRole('region', { name: 'What the plan rests on' });
    await rests.filter({ hasText: 'The shop has learned more since this job was saved' }).waitFor();
    expect(await seenText(rests)).toContain('1 trial and 0 gauged jobs');
    await page.getByLabel('as a shop without history').check();
    await rests.filter({ hasText: 'not of this shop’s own trials' }).waitFor();
  });

  it('is corrected and taken out with a reason, and refuses what cannot be read without losing it', async () => {
    const { page } = await stage.visit();
    const shop = await new KnowledgePage(page).open();
    await page.getByRole('button', { name: 'Enter a trial' }).click();
    await shop.fill({ ...CUT, 'Depth readings': 'deep' });
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    await page.getByRole('alert').filter({ hasText: 'Nothing was saved' }).waitFor();
    await shop.fill({ 'Depth readings': '11.6 12.1' });
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    await shop.state.filter({ hasText: 'is entered' }).waitFor();
    await page.getByRole('button', { name: 'Correct t-01' }).click();
    await shop.fill({ Current: '900', 'Why it is corrected': 'read at the source' });
    await page.getByRole('button', { name: 'Correct', exact: true }).click();
    await shop.state.filter({ hasText: 'is corrected' }).waitFor();
    expect(await seenText(shop.row('t-01'))).toContain('900 A');
    await shop.takeOut('t-01', 'wet air');
    await shop.row('t-01').filter({ hasText: 'wet air' }).waitFor();
    await page.getByText('Nothing counts yet').waitFor();
  });
});
