import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { CostPage } from './pages/cost-page.ts';
import { runFurrow } from './run-furrow.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const SEAM = 'examples/penstock-seam.yaml';

describe.skipIf(NO_BROWSER)('the page of cost and time', () => {
  const stage = useStage();

  it('shows the whole job, where it goes, what larger grooves cost, other ways and changes', async () => {
    const { page } = await stage.visit();
    const cost = await new CostPage(page).open();
    expect(await seenText(cost.region('The whole job'))).toMatch(/up to [\d.]+ EUR/u);
    const picture = page.getByRole('img', { name: /^Where minutes and money go\./u });
    expect(await picture.getAttribute('aria-label')).toMatch(/Refill welding: [^;]+ · \d+ %/u);
    expect(await cost.rowsOf('What a larger groove than planned adds in grinding and refill').count()).toBe(
      7,
    );
    expect(await cost.rowsOf('Other ways, the whole job at medians and usual durations').count()).toBe(5);
    expect(await cost.rowsOf('Changes, planned anew').count()).toBe(4);
  });

  it('reckons anew when a rate is changed', async () => {
    const { page } = await stage.visit();
    const cost = await new CostPage(page).open();
    const before = await seenText(cost.region('The whole job'));
    await cost.entry('Labour per hour').fill('136');
    await page.waitForFunction(
      (old) => document.querySelector('[aria-labelledby="cost-title"]')?.textContent !== old,
      await cost.region('The whole job').textContent(),
    );
    expect(await seenText(cost.region('The whole job'))).not.toBe(before);
  });

  it('says in the words of a shop what a deposition of zero would mean', async () => {
    const { page } = await stage.visit();
    const cost = await new CostPage(page).open();
    await cost.entry('Deposition, kg per h').fill('0');
    await page
      .getByText(/the groove is never full/u)
      .first()
      .waitFor();
    await cost.result.filter({ hasText: 'The job has one mistake' }).waitFor();
  });

  it.each(['bench', 'tablet'] as const)(
    'fits the screen of the %s and can be used by everyone',
    async (screen) => {
      const { page } = await stage.visit({ screen });
      await new CostPage(page).open();
      expect(await cutOff(page)).toEqual([]);
      const violations = await brokenRules(page);
      expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map(({ target }) => target) }))).toEqual([]);
    },
  );
});

describe('furrow cost', () => {
  it('prints the same cost twice, as one JSON object', async () => {
    const [one, two] = await Promise.all([
      runFurrow(['cost', SEAM, '--json']),
      runFurrow(['cost', SEAM, '--json']),
    ]);
    expect(one.code).toBe(0);
    expect(two.out).toBe(one.out);
    const { cost, changes, inputs } = JSON.parse(one.out);
    expect(cost.cost.p90).toBeGreaterThan(cost.cost.p50);
    expect(changes).toHaveLength(4);
    expect(inputs.revision).toMatch(/^[0-9a-f]{64}$/u);
  });

  it('tells a file that is not there as bad input', async () => {
    const { code } = await runFurrow(['cost', 'examples/none.yaml']);
    expect(code).toBe(2);
  });
});
