import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { HeatPage } from './pages/heat-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

/** The hottest place that a picture's words tell of [degC]. */
function hottest(described: string): number {
  return Number(/Hottest (\d+) °C/u.exec(described)?.[1]);
}

describe.skipIf(NO_BROWSER)('heat', () => {
  const stage = useStage();

  it('scrubs from the cold plate through the passes, with the torch on the seam strip', async () => {
    const { page } = await stage.visit();
    const heat = await new HeatPage(page).open();
    await heat.refined();
    await heat.moment.press('Home');
    expect(await heat.moment.getAttribute('aria-valuetext')).toContain('before the first pass');
    expect(await heat.described()).toContain('cut 0.0 mm deep');
    const cold = hottest(await heat.described());
    await heat.moment.press('ArrowRight');
    await heat.moment.press('ArrowRight');
    expect(await heat.moment.getAttribute('aria-valuetext')).toMatch(/pass 1, torch .* from the start/u);
    expect(hottest(await heat.described())).toBeGreaterThan(cold + 100);
    await heat.moment.press('End');
    expect(await heat.moment.getAttribute('aria-valuetext')).toContain('after the last pass');
    expect(await heat.described()).not.toContain('cut 0.0 mm deep');
  });

  it('plays to the end and stops there, and pauses by the space bar', async () => {
    const { page } = await stage.visit();
    const heat = await new HeatPage(page).open();
    await heat.refined();
    await heat.moment.press('Home');
    await heat.moment.press(' ');
    expect(await seenText(heat.play)).toBe('Pause');
    await page.waitForFunction(
      () => Number(document.querySelector<HTMLInputElement>('input[type=range]')?.value) >= 2,
    );
    await heat.moment.press(' ');
    const paused = Number(await heat.moment.inputValue());
    expect(await seenText(heat.play)).toBe('Play');
    const last = Number(await heat.moment.getAttribute('max'));
    expect(paused).toBeLessThan(last);
    await heat.moment.fill(String(last - 1));
    await heat.play.click();
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    expect(Number(await heat.moment.inputValue())).toBe(last);
  });

  it('solves anew with another preheat and another place, and saves the job with it', async () => {
    const { page } = await stage.visit();
    const heat = await new HeatPage(page).open();
    const before = await heat.figure('Back face');
    await heat.solvedAnew(() => heat.field('Preheat for gouging').fill('180 °C'));
    expect(await heat.figure('Preheat for gouging')).toMatch(/^180 °C\s+as the job states/u);
    expect(await heat.figure('Back face')).not.toBe(before);
    await heat.solvedAnew(() => page.getByRole('slider', { name: 'Place along the seam' }).press('Home'));
    expect(await seenText(heat.region('Section'))).toContain('0.00 mm from the start');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await heat.saveState.filter({ hasText: 'saved as revision 1' }).waitFor();
    expect(page.url()).toMatch(/\/jobs\/[^/]+\/heat$/u);
    await page.reload();
    await heat.answered();
    expect(await heat.field('Preheat for gouging').inputValue()).toBe('180 °C');
  });

  it('holds the plan to what the back face stands, and says so where nothing holds', async () => {
    const { page } = await stage.visit();
    const heat = await new HeatPage(page).open();
    await heat.solvedAnew(() => heat.field('Greatest temperature behind').fill('800 °C'));
    expect(await seenText(heat.region('Margins'))).toMatch(/back face/iu);
    await heat.field('Greatest temperature behind').fill('25 °C');
    await heat.status.filter({ hasText: 'No plan holds' }).waitFor();
    expect(await heat.section.count()).toBe(0);
    await heat.field('Greatest temperature behind').fill('hot');
    await page
      .getByRole('status', { name: 'Result' })
      .filter({ hasText: 'The job has one mistake' })
      .waitFor();
  });

  it('gives preheat by each method side by side with reasons, and every source with how far it can be trusted', async () => {
    const { page } = await stage.visit();
    const heat = await new HeatPage(page).open('penstock-seam');
    const preheat = await seenText(heat.region('Preheat'));
    for (const part of ['EN 1011-2', 'hydrogen control', 'Why they differ', 'For gouging', '(memory)']) {
      expect(preheat).toContain(part);
    }
    expect(await seenText(heat.region('Carburised skin and refill'))).toContain('ASME PCC-2');
    expect(await seenText(heat.region('What it rests on'))).toMatch(/derived|judgement/u);
    await page.getByRole('radio', { name: 'inch' }).check({ force: true });
    await page.getByRole('img', { name: /Hottest \d+ °F/u }).waitFor();
  });

  it.each(['bench', 'tablet'] as const)('keeps to the rules of accessibility on a %s', async (screen) => {
    const { page } = await stage.visit({ screen });
    await new HeatPage(page).open('penstock-seam');
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      const violations = await brokenRules(page, colorScheme === 'light' ? 'all' : 'colours');
      expect(
        violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${colorScheme} ${id}: ${html}`)),
      ).toEqual([]);
    }
    expect(await cutOff(page)).toEqual([]);
  });
});
