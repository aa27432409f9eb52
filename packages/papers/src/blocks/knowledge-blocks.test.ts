import { readFileSync } from 'node:fs';
import { answerKnowledge, type KnowledgeReport, readTrials } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { familyTable, knowledgeBlocks, outlierWords, scoreWords } from './knowledge-blocks.ts';

const TRIALS = new URL('../../../../examples/trials/demo-yard.yaml', import.meta.url);

function reportOf(): KnowledgeReport {
  const read = readTrials(readFileSync(TRIALS, 'utf8'));
  if (!read.ok) throw new Error('the example trials are not in order');
  return answerKnowledge(read.value);
}

describe('what a shop knows, as blocks', () => {
  const report = reportOf();

  it('names each kind of work by what it is, sizes in the reader’s units, and how well its depth is known', () => {
    const [first] = report.families;
    const [metric, inch] = (['metric', 'inch'] as const).map((units) => familyTable(report, units).rows[0]!);
    expect(metric?.[2]).toMatch(/ mm/u);
    expect(inch?.[2]).toMatch(/ in/u);
    expect(metric?.slice(4, 7)).toEqual([first!.trials, first!.jobs, first!.readings].map(String));
    // a 90 % interval reaches 1.645 standard deviations to either side, rounded away from better than it is
    const known = Number(/\d+/u.exec(metric!.at(-1)!)![0]);
    expect(known).toBeGreaterThanOrEqual(164.5 * first!.doubt);
    expect(known).toBeLessThan(164.5 * first!.doubt + 1);
  });

  it('tells each spread of the best known kind of work, and each prediction', () => {
    const tables = knowledgeBlocks(report, 'metric').filter((block) => block.kind === 'table');
    expect(tables.map(({ rows }) => rows.length)).toEqual([
      report.families.length,
      4,
      report.scores.entries.length,
    ]);
    const { seam } = report.families[0]!.levels;
    expect(tables[1]?.rows[3]?.[1]).toBe(`${(100 * seam.p50).toFixed(1)} %`);
  });

  it('says that nothing is known or was measured yet', () => {
    const scores = { predictions: 0, inside_90: 0, crps_mean: null, entries: [] };
    const nothing: KnowledgeReport = { ...report, families: [], scores, outliers: [] };
    expect(scoreWords(nothing)).toBe('nothing was measured yet.');
    const blocks = knowledgeBlocks(nothing, 'inch');
    expect(blocks.some(({ kind }) => kind === 'table')).toBe(false);
    expect(JSON.stringify(blocks)).toContain('plans rest on the published rows alone');
  });

  it('names what does not fit, with the weight left to it', () => {
    const outliers = [{ entry: 'job-7', what: 'station 2', weight: 0.126 }];
    expect(outlierWords({ outliers })).toEqual([
      'job-7, station 2: does not fit the rest, is kept and weighs 0.13 of a good one.',
    ]);
  });
});
