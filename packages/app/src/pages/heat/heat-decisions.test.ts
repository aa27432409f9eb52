import { answerHeat, answerJob, type HeatReport, readJob, sentencesWritten } from '@furrow/engine';
import { expect, it } from 'vitest';
import { heatDecisions } from './heat-decisions.ts';

/** A short job of a plate whose certificate nobody has at hand. */
const JOB = `furrow: 1
title: Tank 3
seam: { length: 1 m }
plate: { material: carbon_steel, thickness: 20 mm }
groove: { depth: { wanted: 8 mm, plus: 4 mm, minus: 3 mm }, width: { least: 9 mm, most: 22 mm } }
kit:
  electrodes: [{ diameter: 1/2 in }]
  current: { least: 100 A, most: 1000 A }
  travel: { least: 150 mm/min, most: 2500 mm/min }
`;

function reportOf(text: string): HeatReport {
  const read = readJob(text);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  const answer = answerJob({ job: read.value, version: '0.1.0' });
  const parts = answerHeat(read.value, answer, { quality: 'quick' });
  for (;;) {
    const part = parts.next();
    if (part.done !== true) continue;
    if (part.value === null) throw new Error('there is no plan');
    return part.value.report;
  }
}

it('does not call a preheat none where the composition is not known, and shows the table that needs none', () => {
  const [preheat] = heatDecisions(sentencesWritten(reportOf(JOB), 'metric'), 'metric');
  expect(preheat?.value).toBe('not known');
  expect(preheat?.note).toContain('state the composition from the certificate');
  expect(preheat?.note).toMatch(/prequalified table.*for this thickness/u);
});
