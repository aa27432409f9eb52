import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { BenchPage } from './pages/bench-page.ts';
import { SupplyPages } from './pages/supply-pages.ts';
import { saveDemoJob } from './saved-demo.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const CONFLICT = 409;
describe.skipIf(NO_BROWSER)('power and air', () => {
  const stage = useStage();

  it('says what to describe as long as there is no kit, and plans all the same', async () => {
    const { page, url } = await stage.visit();
    const job = await saveDemoJob(page, url);
    const pages = await new SupplyPages(page).open('supply', job);
    expect(await seenText(pages.region('No kit described yet'))).toContain('power source');
    await pages.open('bay', job);
    expect(await seenText(pages.region('No bay to draw'))).toContain('the outline of the bay');
    await page.getByRole('link', { name: 'Describe the kit' }).click();
    await pages.region('Describe the kit').waitFor();
    expect(await seenText(pages.saveState)).toBe('no kit yet');
  });

  it('fills in the kit, and holds the plan of a job of one’s own to it; the demo job has the demo’s before', async () => {
    const { page, url } = await stage.visit();
    const pages = new SupplyPages(page);
    const bench = await new BenchPage(page).open();
    const notice = page.getByText('Planned with the demo’s kit');
    expect(await seenText(bench.region('Margins'))).toContain('Flowing pressure at the regulator');
    expect(await notice.isVisible()).toBe(true);
    const job = await saveDemoJob(page, url);
    await bench.open(job);
    expect(await seenText(bench.region('Margins'))).not.toContain('Flowing pressure at the regulator');
    await pages.saveDemoKit();
    await bench.open(job);
    expect(await seenText(bench.region('Margins'))).toContain('Flowing pressure at the regulator');
    await bench.open();
    expect(await notice.count()).toBe(0);
  });

  it('shows margins, loop, leads, air path and receiver of the plan', async () => {
    const { page } = await stage.visit();
    const pages = new SupplyPages(page);
    await pages.saveDemoKit();
    await pages.open('supply');
    expect(await seenText(pages.region(/^The kit carries/u))).toContain('limits the time');
    expect(await pages.rowsOf('Power sources at the setting').count()).toBe(2);
    expect(await pages.rowsOf(/^Where the volts go.* in the arc$/u).count()).toBe(6);
    for (const lead of ['Electrode lead', 'Torch lead', 'Work lead']) {
      await pages.drawing(new RegExp(`^Temperature of ${lead}\\.`, 'u')).waitFor();
    }
    const path = await pages.drawing(/^Air from receiver to torch\./u).getAttribute('aria-label');
    expect(path).toMatch(/behind Drop hose [\d.]+ bar without flow, [\d.]+ bar flowing/u);
    await pages.drawing(/^Pressure in the receiver\./u).waitFor();
    await page.getByRole('radio', { name: 'inch' }).check({ force: true });
    await pages.drawing(/behind Drop hose [\d.]+ psi without flow/u).waitFor();
  });

  it('keeps a kit with a mistake as a draft, says where it is, and plans without it', async () => {
    const { page } = await stage.visit();
    const pages = new SupplyPages(page);
    await pages.saveDemoKit();
    await page.getByRole('textbox', { name: 'Stick-out' }).fill('90 bananas');
    await pages.region('One mistake').waitFor();
    await pages.button('Save').click();
    await pages.saveState.filter({ hasText: 'saved as revision 2' }).waitFor();
    await pages.open('supply');
    await pages.region('No kit described yet').waitFor();
  });

  it('refuses to overwrite a kit that somebody else saved, and lets the person choose', async () => {
    const { page, elsewhere } = await stage.visit({ expect: [CONFLICT] });
    const mine = new SupplyPages(page);
    await mine.saveDemoKit();
    const other = await elsewhere();
    const theirs = new SupplyPages(other);
    await other.goto('/kit');
    await other.getByRole('textbox', { name: 'Title' }).fill('Their kit');
    await theirs.button('Save').click();
    await theirs.saveState.filter({ hasText: 'saved as revision 2' }).waitFor();
    await page.getByRole('textbox', { name: 'Title' }).fill('My kit');
    await mine.button('Save').click();
    await mine.button('Save mine after it').click();
    await mine.saveState.filter({ hasText: 'saved as revision 3' }).waitFor();
    expect(await seenText(mine.title)).toBe('My kit');
  });

  it('moves what stands in the bay by mouse, by the keys and by typing, and saves it', async () => {
    const { page } = await stage.visit();
    const pages = new SupplyPages(page);
    await pages.saveDemoKit();
    await pages.open('bay');
    expect(await pages.rowsOf('Ways of leads and hoses, slack in what is needed').count()).toBe(5);
    const across = pages.place('Power source', 'across');

    await pages.handle('Power source').press('ArrowRight');
    expect(await across.inputValue()).toBe('1.10 m');
    await across.fill('2 m');
    await pages.handle('Power source').filter({ visible: true }).waitFor();
    expect(await pages.handle('Power source').getAttribute('aria-label')).toContain('2.00 m across');

    const box = await pages.handle('Air drop').boundingBox();
    if (box === null) throw new Error('the air drop has no handle');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const before = await pages.place('Air drop', 'up').inputValue();
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 30, y - 40, { steps: 4 });
    await page.mouse.up();
    expect(await pages.place('Air drop', 'up').inputValue()).not.toBe(before);

    await pages.button('Save kit').click();
    await pages.saveState.filter({ hasText: 'saved as revision 2' }).waitFor();
    await page.reload();
    await pages.planned();
    expect(await across.inputValue()).toBe('2 m');
  });

  it('takes a place for the station that is dragged, and finds it again', async () => {
    const { page } = await stage.visit();
    const pages = new SupplyPages(page);
    await pages.saveDemoKit();
    await pages.open('bay');
    const across = pages.place('Control station', 'across');
    expect(await across.inputValue()).toBe('');
    await pages.handle('Control station').press('ArrowDown');
    expect(await across.inputValue()).toMatch(/ m$/u);
    await pages.button('Find the station’s place').click();
    expect(await across.inputValue()).toBe('');
  });

  it.each(['bench', 'tablet'] as const)('keeps to the rules of accessibility on a %s', async (screen) => {
    const { page } = await stage.visit({ screen });
    const pages = new SupplyPages(page);
    await pages.saveDemoKit();
    const check = async (): Promise<void> => {
      const violations = await brokenRules(page);
      const found = violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
      // handles lie where things stand, however close: their places can be typed beside the plan (WCAG 2.5.8)
      expect(found.filter((one) => !/^target-size: .*class="bay-handle/u.test(one))).toEqual([]);
      expect(await cutOff(page)).toEqual([]);
    };
    await check();
    await pages.open('supply');
    await check();
    await pages.open('bay');
    await check();
  });
});
