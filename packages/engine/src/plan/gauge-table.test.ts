import { describe, expect, it } from 'vitest';
import { gaugeTable, outlooks, type TableQuestion } from './gauge-table.ts';
import { tableQuestion } from './solve.ts';
import { singleTrackTask } from './solve-task.test-support.ts';
import { testJob } from './test-job.test-support.ts';

const { job } = testJob({ groove: { depth: { wanted: '10 mm', plus: '4 mm', minus: '0.5 mm' } } });
const task = singleTrackTask(job, 900);
const question: TableQuestion = tableQuestion(task, [{ kind: 'set', logEnergy: 0 }], 2);
const EXPECTED = { low: 4e-3, high: 15e-3 };

describe('A gauge table', () => {
  const table = gaugeTable(question, EXPECTED, { kind: 'quick', chance: 0.95 });

  it('has rising edges in half millimetres, one fewer than rows', () => {
    expect(table.edges.length).toBe(table.logEnergy.length - 1);
    expect(table.edges.length).toBe(table.readings.length - 1);
    table.edges.forEach((edge, index) => {
      if (index > 0) expect(edge).toBeGreaterThan(table.edges[index - 1]!);
      expect(edge * 2000).toBeCloseTo(Math.round(edge * 2000), 6);
    });
  });

  it('asks for less energy, so more travel, the deeper the reading', () => {
    const run = table.logEnergy.filter((energy) => !Number.isNaN(energy));
    expect(run.length).toBeGreaterThan(2);
    run.forEach((energy, index) => {
      if (index > 0) expect(energy).toBeLessThanOrEqual(run[index - 1]! + 2e-3);
    });
  });

  it('ends the work at the deep end, and only there', () => {
    const firstDone = table.logEnergy.findIndex((energy) => Number.isNaN(energy));
    expect(firstDone).toBeGreaterThan(0);
    expect(table.logEnergy.slice(firstDone).every((energy) => Number.isNaN(energy))).toBe(true);
    expect(table.readings[firstDone]).toBeGreaterThan(question.required);
  });

  it('keeps the settings inside the travel range', () => {
    const [low, high] = task.energyRange;
    for (const energy of table.logEnergy.filter((value) => !Number.isNaN(value))) {
      expect(energy).toBeGreaterThanOrEqual(low);
      expect(energy).toBeLessThanOrEqual(high);
    }
  });
});

describe('What a reading promises', () => {
  const outlook = outlooks(question)(6e-3, 1e-3);

  it('reaches the depth more surely, and exceeds it more often, with more energy', () => {
    const [low, high] = task.energyRange;
    let before = outlook.after(low);
    for (let step = 1; step <= 20; step += 1) {
      const next = outlook.after(low + ((high - low) * step) / 20);
      expect(next.reached).toBeGreaterThanOrEqual(before.reached - 1e-6);
      expect(next.notTooDeep).toBeLessThanOrEqual(before.notTooDeep + 1e-6);
      before = next;
    }
  });

  it('tells the depth that is exceeded with the chance it says', () => {
    const deep = outlook.depthQuantile(0.2, 0.95);
    const shallow = outlook.depthQuantile(0.2, 0.05);
    expect(shallow).toBeLessThan(deep);
    const asked = outlooks({ ...question, most: deep })(6e-3, 1e-3).after(0.2);
    expect(asked.notTooDeep).toBeCloseTo(0.95, 3);
  });

  it('has a reading that says the law digs deep call for less energy', () => {
    const deeper = outlooks(question)(8e-3, 1e-3);
    expect(deeper.energyForCut(3e-3)).toBeLessThan(outlook.energyForCut(3e-3));
  });
});
