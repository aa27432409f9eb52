import type { Plan } from '@furrow/engine';

/** Characters of a revision by which papers name it. */
const REVISION_SHOWN = 12;

/** A readings file to be filled in: the passes of the plan, and a line for each kind of entry. */
export function recordTemplate({ passes, gauge_stops, trial, run_in }: Plan, revision: string): string {
  const stops = [
    ...(trial === undefined && run_in === undefined ? [] : [0]),
    ...gauge_stops.map(({ after_layer }) => after_layer),
  ];
  return [
    '# What was run and gauged. Amounts as people write them: 12.4 mm, 1/2 in, 28 ipm. Lines that begin with # say how.',
    'furrow_readings: 1',
    `job_revision: ${revision.slice(0, REVISION_SHOWN)}`,
    '# date: 2026-03-04',
    '# gauge: bridge gauge no. 3',
    '# crew: [{ name: Operator, role: operator }]',
    'passes:',
    ...passes.map(({ number }) => `  - { number: ${number} }`),
    '  # - { number: 1, plate: 60 degC, current: 1000 A, voltage: 42 V, travel: 700 mm/min, air: 6 bar, start: "08:10", end: "08:19" }',
    ...(stops.length === 0
      ? []
      : [
          `# gauged on the way: after ${stops.map((stop) => (stop === 0 ? 'the trial cut or first stretch (0)' : `layer ${stop}`)).join(', ')}`,
          '# layers: [{ after_layer: 1, reading: 8 mm, travel_set: 700 mm/min, by: Operator }]',
        ]),
    '# electrode_changes: [{ pass: 1, at: 1.4 m }]',
    '# events: [{ pass: 1, at: 3.6 m, what: arc out for two seconds }]',
    '# stations: [{ at: 0.3 m, depth: 14.2 mm, width: 17.5 mm, root_radius: 8 mm }]',
    '# gauge_check: { block: 12 mm, allowed: 0.1 mm, readings: [{ reading: 12.02 mm }, { reading: 12.01 mm }] }',
    '',
  ].join('\n');
}
