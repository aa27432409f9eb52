import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

/** Presses and entries in which a supervisor gets from an empty database to a card of their own [-]. */
const ACTIONS_MOST = 40;

describe.skipIf(NO_BROWSER)('a first job of one’s own', () => {
  const stage = useStage();

  it.each(['bench', 'tablet'] as const)(
    'goes from an empty database to its printed card in few actions, on a %s',
    async (screen) => {
      const { page } = await stage.visit({ screen });
      const bench = await new BenchPage(page).open();
      let actions = 0;
      const press = async (name: string, role: 'button' | 'link' = 'button'): Promise<void> => {
        actions += 1;
        await page.getByRole(role, { name, exact: true }).click();
      };
      const enter = async (name: string, text: string): Promise<void> => {
        actions += 1;
        await page.getByRole('textbox', { name, exact: true }).fill(text);
      };
      const choose = async (role: 'radio' | 'checkbox', name: RegExp, checked = true): Promise<void> => {
        actions += 1;
        await page.getByRole(role, { name }).setChecked(checked);
      };
      actions += 1;
      await page.getByRole('radio', { name: 'inch' }).check({ force: true });
      await press('New job', 'link');
      await choose('radio', /^Back-gouge/u);
      await enter('Name of the job', 'Tank 3, bottom seam');
      await enter('Length', '20');
      await enter('Thickness', '3/4');
      await enter('Depth', '3/8');
      await choose('checkbox', /^5\/8 in/u, false);
      await enter('Source, at most', '1000');
      await press('Plan it');
      // what was forgotten is asked for beside its box
      await page.getByText('Deeper by at most is asked for.').waitFor();
      await enter('Deeper by at most', '1/8');
      await press('Plan it');
      await bench.planned();
      expect(await seenText(bench.title)).toBe('Tank 3, bottom seam');
      await press('Save');
      await bench.saveState.filter({ hasText: 'saved as revision 1' }).waitFor();
      const popup = page.waitForEvent('popup');
      await press('Print card');
      const card = await popup;
      await card.getByText('Tank 3, bottom seam').first().waitFor();
      const text = await seenText(card.locator('body'));
      // nothing of the demo's plate, crews and prices
      expect(text).not.toMatch(/Penstock|zinc|EUR|Day shift/u);
      expect(actions).toBeLessThan(ACTIONS_MOST);
      expect(await bench.fileText()).not.toMatch(/composition|crews|labour/u);
    },
  );

  it('describes the shop’s kit in six questions', async () => {
    const { page } = await stage.visit({ screen: 'tablet' });
    const box = (name: string) => page.getByRole('textbox', { name, exact: true });
    await page.goto('/kit');
    await page.getByRole('radio', { name: 'inch' }).check({ force: true });
    await page.getByRole('button', { name: 'Begin with this' }).click();
    // what has no usual value is asked for beside its box, and nothing else
    await page.getByText('Size of one conductor is asked for.').waitFor();
    expect(await page.locator('[aria-invalid="true"]').count()).toBe(9);
    const answers = {
      'No-load voltage': '80',
      'Rated current': '1000',
      'Size of one conductor': '4/0',
      'Source to torch': '50',
      'Work to source': '40',
      Bore: '3/4',
      Length: '50',
      'Free air delivered': '60',
      'Delivery pressure': '125',
      'Name of the kit': 'Tank bay',
    };
    for (const [name, text] of Object.entries(answers)) await box(name).fill(text);
    // what is usual is called so, in the units of the shop, and where things stand need not be told
    expect(await box('Regulator set to').getAttribute('placeholder')).toBe('usually 85 psi');
    await page.getByText('usually 46 scfm at 80 psi').waitFor();
    await page.getByRole('radio', { name: 'In a bay of this size' }).check();
    const places = {
      'Length of the bay': '60',
      'Width of the bay': '30',
      'Power source, from the left': '3',
      'Power source, from the front': '10',
      'Air drop, from the left': '3',
      'Air drop, from the front': '20',
      'Start of the seam, from the left': '30',
      'Start of the seam, from the front': '15',
      'Length of the seam': '20',
    };
    for (const [name, text] of Object.entries(places)) await box(name).fill(text);
    await page.getByRole('button', { name: 'Begin with this' }).click();
    await page.getByRole('heading', { level: 1, name: 'Tank bay' }).waitFor();
    // what few shops fill in is folded, and opens where it is wrong
    const form = page.getByRole('form', { name: 'Kit' });
    await form.getByRole('textbox', { name: 'Flow stated at' }).waitFor();
    expect(await form.getByRole('textbox', { name: 'Sonic conductance' }).count()).toBe(0);
    expect(await seenText(page.getByRole('region', { name: 'Leads', exact: true }))).toContain(
      '4/0 AWG (107 mm²)',
    );
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('saved as revision 1').waitFor();
    // an earlier revision is told in words, and comes back as a change that is not saved yet
    await page.getByRole('textbox', { name: 'Title' }).fill('Tank bay, new leads');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('saved as revision 2').waitFor();
    const changes = page.getByRole('region', { name: 'What changed' });
    await changes.getByText('Title: “Tank bay” before, “Tank bay, new leads” now.').waitFor();
    await changes.getByRole('button', { name: 'Put revision 1 back in the form' }).click();
    await page.getByRole('heading', { level: 1, name: 'Tank bay', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { level: 1, name: 'Tank bay, new leads' }).waitFor();
    // the form stays, however much of the text is taken out
    await page.getByRole('tab', { name: 'Text' }).click();
    await page.getByRole('textbox', { name: /text/iu }).first().fill('');
    await page.getByRole('tab', { name: 'Form' }).waitFor();
  });

  it('has form and result within a thumb’s reach on a tablet', async () => {
    const { page } = await stage.visit({ screen: 'tablet' });
    const bench = await new BenchPage(page).open('/demo/defect-pocket');
    await bench.planned();
    const bar = page.getByRole('navigation', { name: 'Parts of the bench' });
    // while a part of the form is seen the bar lies over none of it; where none is, it floats within reach
    const end = async (): Promise<number> => {
      const box = (await bar.boundingBox())!;
      return box.y + box.height;
    };
    expect((await page.locator('#job').boundingBox())!.y).toBeLessThan(1180);
    expect(await end()).toBeGreaterThan(1180);
    await page
      .locator('.result-details')
      .evaluate((details) => scrollTo(0, details.getBoundingClientRect().top + scrollY));
    await expect.poll(end).toBeLessThanOrEqual(1180);
    await bar.getByRole('link', { name: 'Edit the job' }).click();
    await expect.poll(async () => (await page.locator('#job').boundingBox())!.y).toBeLessThan(600);
    // what is long is folded, what is changed most is not, and the form stands right behind the numbers to set
    const folded = (title: string) =>
      page
        .getByRole('form', { name: 'Job' })
        .getByRole('group')
        .filter({ has: page.getByRole('heading', { name: title, exact: true }) })
        .last()
        .evaluate((group) => !(group as HTMLDetailsElement).open);
    expect(await folded('Kit')).toBe(true);
    expect(await folded('Groove')).toBe(false);
    const top = await page.locator('#job').evaluate((job) => job.getBoundingClientRect().top + scrollY);
    expect(top).toBeLessThan(1180);
    await bar.getByRole('link', { name: 'Result' }).click();
    await expect.poll(async () => (await page.locator('#result').boundingBox())!.y).toBeGreaterThan(-10);
    expect(new URL(page.url()).pathname).toBe('/demo/defect-pocket');
  });

  it('tells a refusal in the names of the form, in fractions, and tries each remedy', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open('/demo/defect-pocket');
    await page.getByRole('radio', { name: 'inch' }).check({ force: true });
    await bench.replanned(() => bench.edit('most: 20 mm', 'most: 10.5 mm'));
    const why = await seenText(bench.refusal);
    expect(why).toMatch(/The closest one misses this: .+ asked for, .+ there\./u);
    expect(why).toContain('Greatest width');
    expect(why).toMatch(/\d+\/\d+ in would do/u);
    await bench.replanned(() =>
      bench.refusal
        .getByRole('button', { name: /^Try it/u })
        .first()
        .click(),
    );
    await bench.planned();
    expect(await bench.fileText()).toMatch(/most: (?:\d+ )?\d+\/\d+ in/u);
  });

  it('names a mistake as the form does, with the inch that was meant beside it', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await page.getByRole('radio', { name: 'inch' }).check({ force: true });
    await bench.edit('wanted: 12 mm', 'wanted: 3/8');
    expect(await seenText(bench.summary)).toContain('Depth: "3/8" has no unit');
    // margins of the job before are told nowhere
    expect(await seenText(page.getByRole('link', { name: /^Check/u }).first())).not.toMatch(/tight|fail/u);
    await bench.summary.getByRole('button', { name: 'Write 3/8 in' }).click();
    expect(await bench.fileText()).toContain('wanted: 3/8 in');
  });

  it('writes the version where an empty text is filled in by the form', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open();
    await bench.fileText();
    await bench.text.fill('');
    await bench.tab('Form').click();
    await (await bench.field('Plate', 'Thickness')).fill('20');
    expect(await bench.fileText()).toMatch(/^furrow: 1\n/u);
    expect(await bench.fileText()).toContain('thickness: 20 mm');
  });
});
