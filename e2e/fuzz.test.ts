import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BenchPage } from './pages/bench-page.ts';
import { seenText } from './seen-text.ts';
import { NO_BROWSER, useStage } from './stage.ts';

const SEED = 7;
/** The demo job that is planned quickest: here it matters what is typed, not what is planned. */
const QUICK = '/demo/defect-pocket';
const FIELDS = [
  ['Groove', 'Depth'],
  ['Groove', 'Greatest width'],
  ['Groove', 'Assurance'],
  ['Kit', 'Greatest travel'],
  ['Plate', 'Thickness'],
  ['Job', 'Title'],
] as const;

/** What fingers and clipboards bring: nearly amounts, signs of YAML, other scripts, control characters. */
const typed = fc.oneof(
  fc
    .tuple(
      fc.constantFrom('', '-', '0', '1e9', '1/0', '3/8', '1,500', '0.0001', '99999', '٣'),
      fc.constantFrom('', ' ', 'mm', ' in', '"', ' ipm', ' %', ' mm mm', ' µm', '\u00a0mm'),
    )
    .map(([number, unit]) => number + unit),
  fc.string({ unit: fc.constantFrom(...'{}[]:#&*!|>\'"%@`-,?~ \t0189amé☃𝔸'), maxLength: 24 }),
  fc.string({ unit: 'binary', maxLength: 12 }),
);

describe.skipIf(NO_BROWSER)('whatever is typed', () => {
  const stage = useStage();

  it('leaves the page standing, and a valid job brings the result back', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open(QUICK);
    const before = await bench.figure('Electrode');
    const texts = fc.sample(typed, { numRuns: 60, seed: SEED });
    for (const [index, text] of texts.entries()) {
      const [group, name] = FIELDS[index % FIELDS.length] ?? FIELDS[0];
      const field = await bench.field(group, name);
      const whole = await field.inputValue();
      await field.fill(text);
      const shown = await seenText(page.locator('body'));
      expect(shown, JSON.stringify(text)).not.toMatch(/NaN|undefined|Infinity|\[object/u);
      expect(await bench.cursor.count(), JSON.stringify(text)).toBe(1);
      await field.fill(whole);
    }
    await bench.planned();
    expect(await bench.figure('Electrode')).toBe(before);
    const first = await bench.fileText();
    await bench.edit('wanted: 6 mm', 'wanted: 5 mm');
    await bench.planned();
    expect(await bench.text.inputValue()).toBe(first.replace('wanted: 6 mm', 'wanted: 5 mm'));
  });

  it('stands a text that is cut, doubled and mixed up', async () => {
    const { page } = await stage.visit();
    const bench = await new BenchPage(page).open(QUICK);
    const whole = await bench.fileText();
    const cut = fc.tuple(
      fc.nat(whole.length),
      fc.nat(whole.length),
      fc.constantFrom('', '\t', '- ', ': ', '{', '&a *a', '\n'),
    );
    for (const [from, to, between] of fc.sample(cut, { numRuns: 30, seed: SEED })) {
      await bench.text.fill(whole.slice(0, from) + between + whole.slice(to));
      const shown = await seenText(page.locator('body'));
      expect(shown).not.toMatch(/NaN|undefined|Infinity|\[object/u);
    }
    await bench.tab('Form').click();
    await bench.tab('Text').click();
    await bench.text.fill(whole);
    await bench.planned();
  });
});
