import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { SMALL_KIT } from '../testing/small-kit.ts';
import { EXAMPLES } from '../testing/test-server.ts';
import { readExamples } from './read-examples.ts';

const folder = mkdtempSync(join(tmpdir(), 'furrow-examples-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('readExamples', () => {
  it('tells kits from jobs by what is in them, trials, readings and gauges by their folder, and passes over other files', async () => {
    copyFileSync(join(EXAMPLES, 'defect-pocket.yaml'), join(folder, 'pocket.yaml'));
    writeFileSync(join(folder, 'a-kit.yaml'), SMALL_KIT);
    writeFileSync(join(folder, 'notes.txt'), 'furrow_kit: 1');
    mkdirSync(join(folder, 'trials'));
    const trialsText = 'furrow_trials: 1\nshop: yard\nentries: []\n';
    writeFileSync(join(folder, 'trials', 'yard.yaml'), trialsText);
    mkdirSync(join(folder, 'readings'));
    const readingsText = 'furrow_readings: 1\ndate: 2026-03-04\n';
    writeFileSync(join(folder, 'readings', 'pocket.yaml'), readingsText);
    mkdirSync(join(folder, 'gauges'));
    const gaugeText = 'furrow_gauge: 1\ntitle: bridge gauge\n';
    writeFileSync(join(folder, 'gauges', 'yard.yaml'), gaugeText);
    const { jobs, kits, trials, readings, gauges } = await readExamples(folder);
    expect(jobs.map(({ name }) => name)).toEqual(['pocket']);
    expect(kits).toEqual([{ name: 'a-kit', title: 'Two sources and a roll of hose', text: SMALL_KIT }]);
    expect(trials).toMatchObject([{ name: 'yard', text: trialsText }]);
    expect(readings).toEqual([{ name: 'pocket', title: '2026-03-04', text: readingsText }]);
    expect(gauges).toMatchObject([{ name: 'yard', text: gaugeText }]);
  });
});
