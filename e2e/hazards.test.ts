import { fileURLToPath } from 'node:url';
import { hazardSchema } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { brokenRules } from './broken-rules.ts';
import { cutOff } from './cut-off.ts';
import { SupplyPages } from './pages/supply-pages.ts';
import { runFurrow } from './run-furrow.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const SEAM = fileURLToPath(new URL('../examples/penstock-seam.yaml', import.meta.url));
const KIT = fileURLToPath(new URL('../examples/yard-kit.yaml', import.meta.url));
const PAGE = '/demo/penstock-seam/hazards';

describe.skipIf(NO_BROWSER)('hazards', () => {
  const stage = useStage();

  it('shows crews side by side by family, the fire zone and the standing lists, and permits nothing', async () => {
    const { page } = await stage.visit();
    const pages = new SupplyPages(page);
    await page.goto(PAGE);
    await pages.planned();
    expect(await seenText(pages.region('To keep clear of'))).toContain('Nothing here permits work');
    expect(await seenText(pages.region('Noise: Day shift, 3 people, shift 8 h'))).toContain(
      '5 dB family (OSHA)',
    );
    const rules = pages.region('Noise against the rules');
    expect(await rules.getByRole('columnheader', { name: 'Night shift, seam 8' }).count()).toBe(1);
    expect(await seenText(rules)).toContain('over the figure named');
    await pages.drawing(/^Fire zone in plan view\..*10\.67 m all round/u).waitFor();
    expect(await pages.region('Stop work').getByRole('listitem').count()).toBe(10);
    await page.getByRole('radio', { name: 'inch' }).check({ force: true });
    await pages.drawing(/35 ft all round/u).waitFor();
  });

  it('takes a changed site at once, says what is wrong with one that cannot be, and saves it', async () => {
    const { page } = await stage.visit();
    const pages = new SupplyPages(page);
    await page.goto(PAGE);
    await pages.planned();
    await page.getByRole('combobox', { name: 'Place', exact: true }).selectOption('closed_space');
    await pages.region('Closed space').getByText('An attendant outside').waitFor();
    await page.getByText('Crew 1: Day shift').click();
    const shift = page.getByRole('textbox', { name: 'Shift' }).first();
    await shift.fill('30 h');
    await page
      .getByText(/“30 h” is outside what is accepted here/u)
      .first()
      .waitFor();
    await shift.fill('9 h');
    await pages.region('Noise: Day shift, 3 people, shift 9 h').waitFor();
    await pages.button('Save').click();
    await pages.saveState.filter({ hasText: 'saved as revision 1' }).waitFor();
    expect(page.url()).toMatch(/\/jobs\/[^/]+\/hazards$/u);
  });

  it('draws the zone on the plan of the bay, and leaves it out when asked to', async () => {
    const { page } = await stage.visit();
    const pages = new SupplyPages(page);
    await pages.saveDemoKit();
    await pages.open('bay');
    const zone = pages.drawing(/^Bay in plan view\..*fire zone, 10\.67 m all round/u);
    await zone.waitFor();
    await page.getByRole('checkbox', { name: 'Fire zone' }).uncheck();
    await zone.waitFor({ state: 'detached' });
  });

  it.each(['bench', 'tablet'] as const)('keeps to the rules of accessibility on a %s', async (screen) => {
    const { page } = await stage.visit({ screen });
    const pages = new SupplyPages(page);
    await page.goto(PAGE);
    await pages.planned();
    const violations = await brokenRules(page);
    expect(violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))).toEqual([]);
    expect(await cutOff(page)).toEqual([]);
  });
});

describe('hazards in the terminal', () => {
  it('are JSON in the words of the contract, with what they were computed from', async () => {
    const { code, out, err } = await runFurrow(['hazards', SEAM, '--kit', KIT, '--json']);
    expect([code, err]).toEqual([0, '']);
    const { inputs, hazard } = JSON.parse(out);
    expect(inputs.revision).toMatch(/^[0-9a-f]{64}$/u);
    expect(hazardSchema.parse(hazard)).toEqual(hazard);
    expect(hazard.fire_zone.plan).toBe('bay');
  });

  it('are told in words, in the units asked for', async () => {
    const { code, out } = await runFurrow(['hazards', SEAM, '--units', 'inch']);
    expect(code).toBe(0);
    for (const part of ['Noise: Day shift', '35 ft', 'not covered by the source', 'Stop work']) {
      expect(out).toContain(part);
    }
  });
});
