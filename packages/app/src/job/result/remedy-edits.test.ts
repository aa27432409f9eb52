import { readFileSync } from 'node:fs';
import { answerJob, type Job } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { editFile, jobFile } from '../../sheet/document/index.ts';
import { readGood } from '../../testing/index.ts';
import { remedyEdits } from './remedy-edits.ts';

const POCKET = readFileSync(new URL('../../../../../examples/defect-pocket.yaml', import.meta.url), 'utf8');

function answerOf(text: string) {
  return answerJob({ job: readGood(text), version: '0' });
}

/** What is eased by more of it; the others by less. */
const EASED_UP: ReadonlySet<string> = new Set([
  'width_most',
  'depth_plus',
  'depth_minus',
  'trial_length',
  'source_current_most',
  'travel_most',
  'back_face',
  'stations_most',
  'layers_most',
  'tracks_most',
]);

/** Pockets that are refused, each for one thing. */
const REFUSED: Readonly<Record<string, string>> = {
  'too little room': POCKET.replace('most: 20 mm', 'most: 10.5 mm'),
};

describe('trying a remedy', () => {
  it.each(Object.entries(REFUSED))('frees the job as it was told to: %s', (_name, text) => {
    const { refusal } = answerOf(text);
    expect(refusal, 'the job is refused').toBeDefined();
    const { job } = readGood(text);
    let tried = 0;
    for (const units of ['metric', 'inch'] as const) {
      for (const remedy of refusal!.binding.filter(({ frees }) => frees).slice(0, 1)) {
        const edits = remedyEdits(remedy, job, units);
        if (edits.length === 0) continue;
        tried += 1;
        const edited = editFile(jobFile(text), edits);
        expect(edited.ok).toBe(true);
        if (edited.ok) expect(answerOf(edited.file.text).plan, remedy.constraint).toBeDefined();
      }
    }
    expect(tried).toBeGreaterThan(0);
  });

  it.each([
    ['width_most', 21, 'mm', (job: Job) => job.groove.width.most, 0.021],
    ['width_least', 9, 'mm', (job: Job) => job.groove.width.least, 0.009],
    ['root_radius', 4.5, 'mm', (job: Job) => job.groove.root_radius_least, 0.0045],
    ['depth_plus', 4.25, 'mm', (job: Job) => job.groove.depth.plus, 0.00425],
    ['depth_minus', 0.75, 'mm', (job: Job) => job.groove.depth.minus, 0.00075],
    ['ligament_least', 12, 'mm', (job: Job) => job.groove.ligament_least, 0.012],
    ['assurance', 92.5, '%', (job: Job) => job.groove.assurance, 0.925],
    ['trial_length', 450, 'mm', (job: Job) => job.kit.trial.length_most, 0.45],
    ['gauge', 0.15, 'mm', (job: Job) => job.kit.gauge.reading_sd, 0.00015],
    ['source_current_most', 1050, 'A', (job: Job) => job.kit.current.most, 1050],
    ['source_current_least', 160, 'A', (job: Job) => job.kit.current.least, 160],
    ['travel_most', 2640, 'mm/min', (job: Job) => job.kit.travel.most, 0.044],
    ['travel_least', 120, 'mm/min', (job: Job) => job.kit.travel.least, 0.002],
    ['back_face', 425, 'degC', (job: Job) => job.heat.back_face_most, 698.15],
    ['stations_most', 6, 'stations', (job: Job) => job.kit.gauge.stations_most, 6],
    ['layers_most', 5, 'layers', (job: Job) => job.plan.layers_most, 5],
    ['tracks_most', 9, 'tracks', (job: Job) => job.plan.tracks_most, 9],
    ['electrode_diameter', 19.05, 'mm', (job: Job) => job.kit.electrodes.at(-1)?.diameter, 0.01905],
  ] as const)('writes %s where it belongs, in either system', (constraint, demand, unit, of, expected) => {
    // what eases may be rounded by a thousandth to its own side, to a sixty-fourth or a sixteenth of an inch on a tape
    const eases = EASED_UP.has(constraint) ? 1 : -1;
    for (const units of ['metric', 'inch'] as const) {
      const remedy = { constraint, demand, limit: 0, unit, remedy: '', frees: true };
      const edited = editFile(jobFile(POCKET), remedyEdits(remedy, readGood(POCKET).job, units));
      if (!edited.ok) throw new Error(edited.why);
      const off = ((of(readGood(edited.file.text).job) ?? Number.NaN) / expected - 1) * eases;
      expect(off).toBeGreaterThan(-1e-6);
      const inches = expected / 0.0254;
      const tape = unit === 'mm' && units === 'inch' ? 1 / (inches < 2 ? 64 : 16) / inches : 0;
      expect(off).toBeLessThan(Math.max(1.1e-3, tape));
    }
  });

  it('lets go of locks, one or all', () => {
    const { job } = readGood(`${POCKET}\nlocks: { layers: 1, tracks: 1 }\n`);
    const remedy = (constraint: string) => ({
      constraint,
      demand: 0,
      limit: 2,
      unit: 'locks' as const,
      remedy: '',
      frees: true,
    });
    expect(remedyEdits(remedy('locks.layers'), job, 'metric')).toEqual([
      { do: 'remove', path: ['locks', 'layers'] },
    ]);
    expect(remedyEdits(remedy('locks'), job, 'metric')).toHaveLength(2);
    expect(remedyEdits(remedy('something_else'), job, 'metric')).toEqual([]);
  });
});
