import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metalOf } from '../material/index.ts';
import { predictDepth } from '../removal/index.ts';
import { beliefOfFamily, learnFrom } from './knowledge.ts';
import { knowledgeFrom, readKnowledge } from './read-knowledge.ts';
import { readSummary, writeSummary } from './read-summary.ts';
import { FAMILY, gaugedJobs, trueShop } from './shop.test-support.ts';
import type { Knowledge } from './shop-knowledge.ts';
import { mergeSummaries, summaryOf } from './summary.ts';
import type { ShopSummary } from './summary-schema.ts';

const METAL = metalOf('carbon_steel');
const SETTING = { diameter: 0.0127, current: 850, voltage: 42, travel: 0.0148, pushAngle: Math.PI / 4 };
const shopOf = (shop: string, seed: number, jobs: number): Knowledge =>
  learnFrom({ shop, id: `${shop}-${jobs}`, observations: gaugedJobs(trueShop(seed, 1), jobs, seed + 100) });
const NORTH = shopOf('north', 3, 8);
const SHOPS: readonly ShopSummary[] = [
  summaryOf(NORTH),
  summaryOf(shopOf('north', 3, 4)),
  summaryOf(shopOf('south', 5, 6)),
  summaryOf(shopOf('west', 7, 5)),
  { ...summaryOf(shopOf('west', 8, 5)), id: 'west-other' },
];
const read = (summaries: readonly ShopSummary[]) => {
  const outcome = readSummary(writeSummary(summaries));
  if (!outcome.ok) throw new Error(outcome.issues[0]?.message);
  return outcome.value;
};
const width = (knowledge: Knowledge): number => {
  const { p05, p95 } = predictDepth(beliefOfFamily(knowledge, METAL, FAMILY), SETTING);
  return Math.log(p95 / p05);
};

describe('summaries of shops', () => {
  it('are merged the same in any order and any number of times', () => {
    const lists = fc.array(fc.constantFrom(...SHOPS), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(lists, lists, lists, (a, b, c) => {
        const text = (summaries: readonly ShopSummary[]): string => writeSummary(summaries);
        const whole = text([...a, ...b, ...c]);
        expect(text(mergeSummaries([...c, ...a, ...b]))).toBe(whole);
        expect(text(mergeSummaries([...mergeSummaries([...a, ...b]), ...c]))).toBe(whole);
        expect(text(mergeSummaries([...a, ...mergeSummaries([...b, ...c]), ...a]))).toBe(whole);
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('keep the later of two of one shop', () => {
    expect(mergeSummaries(SHOPS).map(({ id }) => id)).toEqual(['north-8', 'south-6', 'west-other']);
  });

  it('come back from the file as they were, and hold no reading', () => {
    const text = writeSummary(SHOPS);
    expect(read(SHOPS).shops).toEqual(mergeSummaries(SHOPS));
    for (const { depth } of NORTH.observations.flatMap((each) =>
      each.passes.flatMap((pass) => pass.stations),
    )) {
      expect(text).not.toContain(String(depth));
    }
  });

  it('tell a shop about itself what its own trials tell it', () => {
    const back = knowledgeFrom(undefined, read([SHOPS[0]!]))!;
    const [own, told] = [NORTH, back].map((each) =>
      predictDepth(beliefOfFamily(each, METAL, FAMILY), SETTING),
    ) as [ReturnType<typeof predictDepth>, ReturnType<typeof predictDepth>];
    expect(Math.abs(Math.log(told.p50 / own.p50))).toBeLessThan(0.01);
    expect(width(back) / width(NORTH)).toBeGreaterThan(0.85);
    expect(width(back) / width(NORTH)).toBeLessThan(1.2);
    expect(back.name).toMatchObject({ trials: 0, jobs: 8 });
  });

  it('are not counted a second time beside the trials of the shop itself', () => {
    const observations = NORTH.observations;
    const both = learnFrom({ shop: 'north', id: 'x', observations, others: [SHOPS[0]!] });
    expect(both.name.jobs).toBe(8);
    expect(width(both)).toBeCloseTo(width(NORTH), 9);
  });

  it('of several shops leave a new shop less in doubt than none, and more than its own trials would', () => {
    const none = learnFrom({ shop: 'east', id: 'x', observations: [] });
    const pooled = knowledgeFrom(undefined, read(SHOPS))!;
    expect(pooled.name.jobs).toBe(19);
    expect(width(pooled)).toBeLessThan(0.97 * width(none));
    expect(width(pooled)).toBeGreaterThan(1.3 * width(NORTH));
  });

  it.each([
    ['a number too few', (text: string) => text.replace(/"pull": \[[^,]+, /u, '"pull": [')],
    ['a precision below zero', (text: string) => text.replace(/"information": \[/u, '"information": [-')],
    ['a column that is none', (text: string) => text.replace('electrode:jointed', 'colour:jointed')],
    ['another law', (text: string) => text.replace('"slope"', '"steepness"')],
  ])('are refused with %s', (_what, spoil) => {
    const text = writeSummary([SHOPS[0]!]);
    expect(spoil(text)).not.toBe(text);
    const outcome = readKnowledge(spoil(text));
    expect(outcome.ok ? [] : outcome.issues.map(({ code }) => code)).toEqual(['SUMMARY_COMBINATION']);
  });
});
