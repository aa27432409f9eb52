import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { CommissionPage } from './pages/commission-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, SCREENS, useStage } from './stage.ts';

const CONFLICT = 409;
const FLOWING = 'Flowing air pressure, the torch';
describe.skipIf(NO_BROWSER)('the rig before the first arc', () => {
  const stage = useStage();

  it('ticks, reads, judges at once, and keeps it all with the job', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const rig = await new CommissionPage(page).start(url, true);
    const ticks = rig.region('Connections').getByRole('checkbox');
    expect(await ticks.count()).toBeGreaterThan(5);
    await ticks.first().check();
    await rig.reading(FLOWING).fill('5 psi');
    await rig
      .verdict(FLOWING)
      .filter({ hasText: /low: .* is below the band of .*Too little air at the torch.*Check next: /su })
      .waitFor();
    const causes = rig.causes.getByRole('listitem');
    expect(await seenText(causes.first())).toContain('Too little air at the torch');
    await page.getByRole('group', { name: 'Polarity' }).getByRole('radio', { name: 'Wrong' }).check();
    await rig.verdict('Polarity').filter({ hasText: 'Electrode on the wrong pole' }).waitFor();
    await page.getByRole('button', { name: `Add a note, ${FLOWING}` }).click();
    await page.getByRole('textbox', { name: `Note, ${FLOWING}` }).fill('gauge 3');
    expect(await seenText(rig.progress)).toMatch(/^1 of \d+ connections ticked, 2 of \d+ .*2 of them not/u);
    await rig.save();
    await rig.open(new URL(page.url()).pathname);
    expect(await rig.reading(FLOWING).inputValue()).toBe('5 psi');
    expect(await page.getByRole('textbox', { name: `Note, ${FLOWING}` }).inputValue()).toBe('gauge 3');
    expect(await ticks.first().isChecked()).toBe(true);
  });

  it('opens with the demo job and its kit, and takes what was read along when the job is saved', async () => {
    const { page } = await stage.visit({ screen: 'tablet' });
    const rig = await new CommissionPage(page).open('/demo/penstock-seam/commission');
    expect(await rig.region('Connections').getByRole('checkbox').count()).toBeGreaterThan(5);
    expect(await seenText(page.getByRole('main'))).toContain('Job not saved yet, the demo’s kit');
    await rig.reading('Stick-out').fill('90 mm');
    await rig.saveState.filter({ hasText: /^kept in this browser/u }).waitFor();
    await rig.open('/demo/penstock-seam/commission');
    expect(await rig.reading('Stick-out').inputValue()).toBe('90 mm');
    await page.getByRole('button', { name: 'Save the job with them' }).click();
    await rig.saveState.filter({ hasText: /^saved with the job, revision 1/u }).waitFor();
    expect(page.url()).toMatch(/\/jobs\/[^/]+\/commission$/u);
    await rig.open(new URL(page.url()).pathname);
    expect(await rig.reading('Stick-out').inputValue()).toBe('90 mm');
  });

  it('is gone through every day by thumb, ten checks or fewer, and goes on after a reload where it was left', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const rig = await new CommissionPage(page).start(url, true);
    await page.getByRole('radio', { name: 'Every day' }).check();
    const round = page.getByRole('region', { name: 'Every day' });
    const step = round.getByRole('status', { name: 'Step' });
    const [, total = ''] = /^1 of (\d+)/u.exec(await seenText(step)) ?? [];
    expect(Number(total)).toBeLessThanOrEqual(10);
    const next = round.getByRole('button', { name: /^(Next|To the end)$/u });
    for (let n = 1; n < Number(total); n += 1) {
      if ((await seenText(round)).includes('Flowing air pressure, the torch')) break;
      const fine = round.getByRole('radio', { name: 'As it should be' });
      if ((await fine.count()) > 0) await fine.check();
      await next.click();
    }
    expect(await seenText(round.getByRole('heading', { level: 2 }))).toBe(FLOWING);
    const keys = round.getByRole('group', { name: 'Number keys' });
    await keys.getByRole('button', { name: '2', exact: true }).click();
    await rig.verdict(FLOWING).getByText('is below the band').waitFor();
    await rig.saveState.filter({ hasText: /^saved with the job/u }).waitFor();
    expect(await brokenRules(page)).toEqual([]);
    await page.reload();
    await rig.verdict(FLOWING).getByText('is below the band').waitFor();
    for (let n = 0; n < 10 && (await next.isEnabled()); n += 1) await next.click();
    await round.getByRole('button', { name: 'Emergency stop: not made' }).waitFor();
    await round.getByRole('button', { name: `${FLOWING}: not as it should be` }).click();
    expect(await seenText(round.getByRole('heading', { level: 2 }))).toBe(FLOWING);
    expect(await seenText(round)).toContain('What this round leaves out');
    await page.getByRole('radio', { name: 'After a change' }).check();
    await page.getByRole('checkbox', { name: 'another gauge' }).check();
    await page.getByRole('region', { name: 'After a change' }).getByText('1 of 1').waitFor();
    await page.getByRole('radio', { name: 'Whole list' }).check();
    expect(await rig.reading(FLOWING).inputValue()).toMatch(/^2 /u);
  });

  it('asks for the unit where none was typed, and writes the nearest reading', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const rig = await new CommissionPage(page).start(url, true);
    await rig.reading(FLOWING).fill('6');
    await rig.verdict(FLOWING).getByText('has no unit').waitFor();
    expect(await rig.reading(FLOWING).getAttribute('aria-invalid')).toBe('true');
    await rig.verdict(FLOWING).getByRole('button', { name: 'Write 6 bar' }).click();
    await rig.verdict(FLOWING).getByText('in band').waitFor();
  });

  it('ranks causes by what the run showed, and counts what it was', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const rig = await new CommissionPage(page).start(url, false);
    await rig.region('No kit described yet').getByRole('link', { name: 'Describe the kit' }).waitFor();
    expect(await rig.region('Connections').count()).toBe(0);
    const shallow = rig.faults.getByRole('group', { name: /first centimetre or two shallower/u });
    await shallow.getByRole('radio', { name: 'Yes' }).check();
    await rig.region('Best check next: start dwell').getByRole('button', { name: 'Low' }).click();
    const first = rig.causes.getByRole('listitem').first();
    await first.filter({ hasText: 'Travel starts too soon' }).waitFor();
    await rig.causes.getByRole('button', { name: 'It was this: Travel starts too soon' }).click();
    await rig.region('Found on this job').getByText('Travel starts too soon').waitFor();
    await rig.faults.getByText('moved by 1 case this shop has counted').waitFor();
    await rig.save();
    await rig.open(new URL(page.url()).pathname);
    await rig.faults.getByText('moved by 1 case this shop has counted').waitFor();
    await rig
      .region('Found on this job')
      .getByRole('button', { name: /^It was not this/u })
      .click();
    await rig.faults.getByText('until this shop has counted cases').waitFor();
    await rig.save();
  });

  it('keeps what was entered while the server is away, and says that it is not saved', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const rig = await new CommissionPage(page).start(url, false);
    await page.route(`**${rig.recordPath}`, (route) => route.abort());
    await rig.reading('Stick-out').fill('90 mm');
    await page.getByRole('button', { name: 'Save now' }).click();
    await rig.saveState.filter({ hasText: /^not saved: .*kept in this browser/u }).waitFor();
    await page.unroute(`**${rig.recordPath}`);
    await rig.open(new URL(page.url()).pathname);
    expect(await rig.reading('Stick-out').inputValue()).toBe('90 mm');
    await rig.saveState.filter({ hasText: /^saved with the job, revision 1/u }).waitFor();
  });

  it('brings two tablets together, and asks where both read the same check', async () => {
    const { page, url, elsewhere } = await stage.visit({ screen: 'tablet', expect: [CONFLICT] });
    const mine = await new CommissionPage(page).start(url, false);
    const theirs = await new CommissionPage(await elsewhere()).open(new URL(page.url()).pathname);
    await theirs.reading('Stick-out').fill('90 mm');
    await theirs.reading('Current').fill('600 A');
    await theirs.save();
    await mine.reading('Torch height').or(mine.reading('Height of the torch')).fill('80 mm');
    await mine.save();
    expect(await mine.reading('Stick-out').inputValue()).toBe('90 mm');
    await theirs.reading('Current').fill('610 A');
    await theirs.page.getByRole('button', { name: 'Save now' }).click();
    await theirs.saveState.filter({ hasText: /^saved/u }).waitFor();
    await mine.reading('Current').fill('620 A');
    await mine.page.getByRole('button', { name: 'Save now' }).click();
    await mine.page.getByRole('button', { name: 'Take what was saved' }).click();
    await mine.saveState.filter({ hasText: /^saved/u }).waitFor();
    expect(await mine.reading('Current').inputValue()).toBe('610 A');
  });

  it('breaks no rule of WCAG 2.2 AA, fits its screens, and is big enough for a thumb', async () => {
    const { page, url } = await stage.visit({ screen: 'tablet' });
    const rig = await new CommissionPage(page).start(url, true);
    await rig.reading(FLOWING).fill('5 psi');
    await rig.reading('Current').fill('600');
    const wrong: string[] = [];
    for (const [screen, size] of Object.entries(SCREENS)) {
      await page.setViewportSize(size);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
        const violations = await brokenRules(page, colorScheme === 'light' ? 'all' : 'colours');
        for (const { id, nodes } of violations)
          wrong.push(...nodes.map((node) => `${screen} ${colorScheme}: ${id} at ${node.target.join(' ')}`));
      }
      wrong.push(...(await cutOff(page)).map((name) => `${screen}: ${name} is cut off`));
    }
    expect(wrong).toEqual([]);
    const small = await page.getByRole('main').evaluate((main) =>
      [...main.querySelectorAll('button, input, a.button')].flatMap((node) => {
        const { height } = (node.closest('label') ?? node).getBoundingClientRect();
        return height < 44 ? [`${node.getAttribute('aria-label') ?? node.textContent}: ${height} px`] : [];
      }),
    );
    expect(small).toEqual([]);
  });

  it('prints what was read, blanks for the rest and places to sign', async () => {
    const { page, url } = await stage.visit();
    const rig = await new CommissionPage(page).start(url, true);
    await rig.reading(FLOWING).fill('6 bar');
    await page.emulateMedia({ media: 'print' });
    expect(await rig.reading(FLOWING).isVisible()).toBe(true);
    expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
    expect(await seenText(rig.region('Signatures'))).toMatch(
      /signs for nobody[\s\S]*Released for the first arc by/u,
    );
    expect(await rig.faults.isVisible()).toBe(false);
  });
});
