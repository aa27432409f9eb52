import { answerJob } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../sample-plan.test-data.ts';
import { runRecordDocument } from './run-record-document.ts';

const read = exampleJob('penstock-seam');
const answer = answerJob({ job: read, version: '0.1.0' });
const { plan } = answer;

describe('the blank run record', () => {
  it('has a line for every gauging that the plan asks for, with its stations and the travel to be set', () => {
    const paper = runRecordDocument({ read, answer }, { units: 'metric', paper: 'a4' });
    const table = paper.blocks.find(
      (block) => block.kind === 'table' && block.caption.startsWith('Gauged on the way'),
    );
    if (table?.kind !== 'table') throw new Error('there is no such table');
    const asked = [
      ...(plan!.trial === undefined ? [] : [['after the trial cut', plan!.trial.stations.length]]),
      ...(plan!.run_in === undefined ? [] : [['after the first stretch', plan!.run_in.stations.length]]),
      ...plan!.gauge_stops.map((stop) => [`after layer ${stop.after_layer}`, stop.stations]),
    ];
    expect(asked.length).toBeGreaterThan(0);
    expect(table.rows.map(([when, stations]) => [when, Number(stations)])).toEqual(asked);
    expect(table.columns.filter(({ hand }) => hand).map(({ title }) => title)).toContain('Travel set');
  });
});
