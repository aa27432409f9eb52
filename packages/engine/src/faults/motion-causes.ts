import type { FaultCause } from './model.ts';

/** Causes in the motion, the settings of the control and the gauge, and what no table foresees. Weights and chances: judgement, no source. */
export const MOTION_CAUSES: readonly FaultCause[] = [
  {
    id: 'short_dwell',
    title: 'Travel starts too soon',
    mechanism: 'The carriage moves off before the arc has dug its pit, so the first stretch stays shallow.',
    remedy: 'Set the start dwell of the plan.',
    weight: 7,
    shows: {
      worse_at_ends: { yes: 0.6 },
      from_first_arc: { yes: 0.95 },
      shallow_start: { yes: 0.93 },
      start_dwell: { low: 0.97, high: 0.01 },
    },
  },
  {
    id: 'long_dwell',
    title: 'Travel starts too late',
    mechanism: 'The arc digs on in one place before the carriage moves: the start is a pit.',
    remedy: 'Set the start dwell of the plan.',
    weight: 3,
    shows: {
      worse_at_ends: { yes: 0.6 },
      from_first_arc: { yes: 0.95 },
      deep_start: { yes: 0.93 },
      start_dwell: { low: 0.01, high: 0.97 },
    },
  },
  {
    id: 'travel_slip',
    title: 'Carriage slips or stalls',
    mechanism: 'Where the carriage hangs it digs deep, where it catches up it stays shallow: ridges follow.',
    remedy: 'Clean rail and wheels, set their pressure, keep leads and hoses from pulling at the carriage.',
    weight: 7,
    shows: {
      depth: { low: 0.05, high: 0.3 },
      from_first_arc: { yes: 0.25 },
      even_pitch: { yes: 0.35 },
      groove_width: { low: 0.05, high: 0.35 },
      ridged_floor: { yes: 0.75 },
      uneven_depth: { yes: 0.6 },
      travel_time: { low: 0.02, high: 0.7 },
      carriage_slips: { yes: 0.92 },
    },
  },
  {
    id: 'travel_scale_off',
    title: 'Travel other than set',
    mechanism:
      'The carriage runs steadily, but not at the speed shown, so every pass is too shallow or too deep.',
    remedy: 'Set the travel by the timed length, not by the dial.',
    weight: 5,
    shows: {
      depth: { low: 0.53, high: 0.45 },
      from_first_arc: { yes: 0.95 },
      groove_width: { low: 0.35, high: 0.35 },
      travel_time: { low: 0.53, high: 0.44 },
    },
  },
  {
    id: 'track_off_seam',
    title: 'Track out of line with the seam',
    mechanism:
      'The carriage follows its track, not the seam: the groove leaves the line and the height changes.',
    remedy: 'Set the track by a pointer run over the whole seam.',
    weight: 6,
    shows: {
      worse_at_ends: { yes: 0.4 },
      from_first_arc: { yes: 0.85 },
      worsens_with_time: { yes: 0.3 },
      one_sided: { yes: 0.15 },
      groove_wandering: { yes: 0.8 },
      uneven_depth: { yes: 0.35 },
      torch_height: { low: 0.3, high: 0.35 },
      track_off_seam: { yes: 0.95 },
    },
  },
  {
    id: 'gauge_off',
    title: 'Depth gauge off its zero',
    mechanism: 'The groove may be as planned: the gauge reads wrong by the same amount everywhere.',
    remedy: 'Set the gauge to zero on a flat plate and read the groove again.',
    weight: 3,
    shows: {
      depth: { low: 0.49, high: 0.49 },
      from_first_arc: { yes: 0.8 },
      gauge_zero: { low: 0.48, high: 0.49 },
    },
  },
  {
    id: 'none_of_these',
    title: 'None of the causes listed',
    mechanism: 'What was seen fits none of the causes well.',
    remedy: 'Stop and ask the welding engineer; note what was found, so that it can be counted.',
    weight: 3,
    shows: {
      depth: { low: 0.25, high: 0.2 },
      uneven_depth: { yes: 0.25 },
      ridged_floor: { yes: 0.2 },
      slag_left: { yes: 0.2 },
      hunting_arc: { yes: 0.25 },
      arc_goes_out: { yes: 0.2 },
      groove_wandering: { yes: 0.15 },
    },
  },
];
