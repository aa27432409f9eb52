import type { FaultCause } from './model.ts';

/** Causes in the electric loop. Weights and chances: judgement, no source. */
export const ELECTRIC_CAUSES: readonly FaultCause[] = [
  {
    id: 'wrong_polarity',
    title: 'Electrode on the wrong pole',
    mechanism:
      'On the wrong pole the arc is unsteady, the electrode overheats and carbon goes into the groove.',
    remedy: 'Power off and locked out: change the leads over at the source and check every joint again.',
    weight: 4,
    shows: {
      shallow_throughout: { yes: 0.6 },
      carbon_deposit: { yes: 0.7 },
      hunting_arc: { yes: 0.6 },
      sputtering: { yes: 0.6 },
      electrode_overheated: { yes: 0.5 },
      hard_start: { yes: 0.4 },
      polarity_wrong: { yes: 0.98 },
    },
  },
  {
    id: 'sense_wire_misplaced',
    title: 'Sense wire landed in the wrong place',
    mechanism:
      'The control then counts volts lost in leads and joints as arc volts and holds the arc too short by that much.',
    remedy: 'Land the sense wire on the plate beside the groove, away from the path of the work current.',
    weight: 6,
    shows: {
      carbon_deposit: { yes: 0.5 },
      touches_down: { yes: 0.5 },
      shallow_throughout: { yes: 0.35 },
      uneven_depth: { yes: 0.3 },
      hunting_arc: { yes: 0.3 },
      arc_volts: { low: 0.85, high: 0.03 },
      sense_difference: { low: 0.02, high: 0.92 },
      sense_wire_elsewhere: { yes: 0.95 },
    },
  },
  {
    id: 'low_no_load_volts',
    title: 'Too few no-load volts',
    mechanism: 'The source has not the volts to strike the arc or to carry it through a swing in length.',
    remedy:
      'Check the range switch and the input supply of the source; use a source with more no-load volts.',
    weight: 3,
    shows: {
      hard_start: { yes: 0.8 },
      arc_goes_out: { yes: 0.7 },
      hunting_arc: { yes: 0.4 },
      no_load_volts: { low: 0.93, high: 0.01 },
      terminal_volts: { low: 0.4, high: 0.02 },
    },
  },
  {
    id: 'leads_too_small',
    title: 'Too many volts lost in the leads',
    mechanism: 'Long, thin or hot leads take the volts that the arc needs, and more as they warm up.',
    remedy: 'Add a parallel lead, use a larger size, or stand the source closer.',
    weight: 5,
    shows: {
      shallow_throughout: { yes: 0.4 },
      uneven_depth: { yes: 0.4 },
      arc_goes_out: { yes: 0.4 },
      hard_start: { yes: 0.2 },
      terminal_volts: { low: 0.02, high: 0.75 },
      current: { low: 0.6, high: 0.02 },
    },
  },
  {
    id: 'loose_joint',
    title: 'Loose or dirty joint',
    mechanism: 'A joint that is not tight is a resistance: it heats, drops volts and comes and goes.',
    remedy: 'Power off and locked out: clean both faces, tighten, read the millivolts again.',
    weight: 10,
    shows: {
      hot_joint: { yes: 0.75 },
      hunting_arc: { yes: 0.5 },
      arc_goes_out: { yes: 0.35 },
      uneven_depth: { yes: 0.3 },
      terminal_volts: { low: 0.03, high: 0.4 },
      joint_millivolts: { low: 0.01, high: 0.93 },
      current: { low: 0.3, high: 0.03 },
    },
  },
  {
    id: 'current_low',
    title: 'Current lower than set',
    mechanism:
      'The source gives less than it is set to: a dial that is off, a lost phase or a thermal cut-back.',
    remedy:
      'Set the current by the clamp meter; look for a lost phase or a blocked cooling path of the source.',
    weight: 4,
    shows: {
      shallow_throughout: { yes: 0.85 },
      hard_start: { yes: 0.25 },
      slag_left: { yes: 0.2 },
      current: { low: 0.93, high: 0.01 },
      terminal_volts: { low: 0.3, high: 0.03 },
    },
  },
  {
    id: 'arc_volts_set_low',
    title: 'Arc volts set too low',
    mechanism: 'The feed holds the arc shorter than planned: the electrode touches down and leaves carbon.',
    remedy: 'Set the arc volts of the plan.',
    weight: 4,
    shows: {
      carbon_deposit: { yes: 0.5 },
      touches_down: { yes: 0.6 },
      sputtering: { yes: 0.3 },
      shallow_throughout: { yes: 0.3 },
      arc_volts: { low: 0.9, high: 0.02 },
      arc_volts_set: { low: 0.95, high: 0.01 },
    },
  },
  {
    id: 'arc_blow',
    title: 'Arc blow',
    mechanism:
      'The field of the work current pushes the arc aside, most near the ends and the work connection.',
    remedy: 'Move or split the work connection; keep leads from running beside the seam.',
    weight: 4,
    shows: {
      leaning_arc: { yes: 0.85 },
      groove_wandering: { yes: 0.4 },
      uneven_depth: { yes: 0.4 },
      hunting_arc: { yes: 0.35 },
      arc_goes_out: { yes: 0.25 },
      slag_left: { yes: 0.3 },
      lean_follows_lead: { yes: 0.9 },
    },
  },
];
