import type { FaultObservable, OutcomeChance } from './model.ts';

function reading(
  id: string,
  title: string,
  ask: string,
  minutes: number,
  otherwise: OutcomeChance,
): FaultObservable {
  return { id, kind: 'reading', title, ask, minutes, otherwise };
}

function inspection(id: string, title: string, ask: string, minutes: number, yes: number): FaultObservable {
  return { id, kind: 'inspection', title, ask, minutes, otherwise: { yes } };
}

/** A reading in order lies outside its band, of two standard deviations, about this often on each side [-]. */
const STRAY = { low: 0.025, high: 0.025 };

/** What can be read or looked at afterwards. Minutes and `otherwise`: judgement, no source. */
export const CHECKS: readonly FaultObservable[] = [
  reading('no_load_volts', 'no-load volts', 'Read the volts at the source terminals with no arc.', 3, STRAY),
  reading(
    'terminal_volts',
    'loaded volts at the source',
    'Read the volts at the source terminals with the arc burning.',
    4,
    STRAY,
  ),
  reading(
    'arc_volts',
    'volts between electrode holder and plate',
    'Read the volts between holder and plate with the arc burning.',
    6,
    { low: 0.05, high: 0.05 },
  ),
  reading(
    'sense_difference',
    'displayed less measured arc volts',
    'Compare the displayed arc volts with a meter between holder and plate, arc burning.',
    4,
    STRAY,
  ),
  reading(
    'lead_volts',
    'volts lost in the leads',
    'Read the volts from source to holder and from plate to source, arc burning.',
    5,
    STRAY,
  ),
  reading('current', 'current', 'Read the current with a clamp meter, arc burning.', 4, {
    low: 0.05,
    high: 0.05,
  }),
  reading(
    'joint_millivolts',
    'millivolts across the joints',
    'Read the millivolts across each joint at the set current.',
    8,
    { low: 0.01, high: 0.04 },
  ),
  reading(
    'static_pressure',
    'static air pressure',
    'Read the air pressure with the valve at the torch shut.',
    2,
    STRAY,
  ),
  reading(
    'flowing_pressure',
    'flowing air pressure at the torch',
    'Read the air pressure at the torch while the air flows.',
    3,
    STRAY,
  ),
  reading(
    'push_angle',
    'angle of the electrode',
    'Power off; lay a protractor against the electrode.',
    3,
    STRAY,
  ),
  reading('stick_out', 'stick-out', 'Power off; measure from the contact jaws to the tip.', 2, {
    low: 0.04,
    high: 0.04,
  }),
  reading(
    'torch_height',
    'height of the torch along the seam',
    'Power off; measure the height of the torch at the start, middle and end.',
    5,
    STRAY,
  ),
  reading(
    'travel_time',
    'time over the measured length',
    'Time the carriage over the measured length, no arc.',
    4,
    STRAY,
  ),
  reading('start_dwell', 'start dwell', 'Read the wait between arc and travel at the control.', 2, STRAY),
  reading('arc_volts_set', 'arc volts set', 'Read the arc volts that the control is set to hold.', 2, STRAY),
  reading('gauge_zero', 'zero of the depth gauge', 'Set the gauge on a flat plate and read it.', 2, STRAY),
  reading(
    'tip_taper',
    'taper of the electrode tip',
    'Power off and cold; look at the tip: blunt is low, a long taper is high.',
    2,
    { low: 0.04, high: 0.04 },
  ),
  reading(
    'groove_width',
    'width of the groove',
    'Measure the width of a cleaned stretch against the plan.',
    2,
    { low: 0.04, high: 0.04 },
  ),
  reading(
    'electrode_use',
    'electrode used per length of groove',
    'Power off and cold; measure the electrode used over a known stretch against the plan.',
    3,
    { low: 0.04, high: 0.04 },
  ),
  inspection(
    'polarity_wrong',
    'the electrode on the wrong pole',
    'Power off and locked out; follow the leads: is the electrode on the wrong pole?',
    4,
    0.01,
  ),
  inspection(
    'sense_wire_elsewhere',
    'the sense wire on another point',
    'Power off; follow the sense wire: does it end elsewhere than at the plate beside the groove?',
    3,
    0.02,
  ),
  inspection(
    'water_at_torch',
    'water from the torch',
    'Blow the air onto a clean dry plate for half a minute: are there drops?',
    2,
    0.03,
  ),
  inspection(
    'air_out_of_step',
    'air out of step with the arc',
    'Source off; run the cycle of the control: does the air come late, or stop while the arc would still burn?',
    3,
    0.03,
  ),
  inspection(
    'jet_uneven',
    'an uneven air jet',
    'Look at the air holes and blow at a strip of cloth: is a hole shut, or the jet off the electrode?',
    3,
    0.03,
  ),
  inspection(
    'contact_worn',
    'worn contact jaws',
    'Power off and cold; are the contact jaws pitted, or does the electrode sit loose in them?',
    5,
    0.06,
  ),
  inspection(
    'feed_slips',
    'slipping feed rolls',
    'Power off; jog the feed with the tip against a block of wood, hands clear of the rolls: do they slip?',
    4,
    0.03,
  ),
  inspection(
    'carriage_slips',
    'a slipping carriage',
    'Chalk a wheel and the rail and run the carriage: do the marks part, or does it stall?',
    4,
    0.03,
  ),
  inspection(
    'track_off_seam',
    'a track off the seam',
    'Run the carriage dry with a pointer: does it leave the seam?',
    5,
    0.04,
  ),
  inspection(
    'electrode_joint_open',
    'an open electrode joint',
    'Power off and cold; is the joint between two electrodes open, cracked or burnt?',
    3,
    0.03,
  ),
  inspection(
    'lean_follows_lead',
    'a lean that follows the work lead',
    'Power off; move the work connection to the other end and try again: does the lean change side?',
    10,
    0.03,
  ),
];
