import { CAUTIONS } from './cautions.ts';
import type { CheckHints } from './check.ts';
import type { CommissionInput } from './commission-input.ts';
import { passesBy, passNames } from './commission-input.ts';
import type { CheckDraft } from './draft.ts';

/** Radians of a degree. */

function confirm(
  id: string,
  title: string,
  ask: string,
  why: string,
  evidence: string | null,
  hints: CheckHints = {},
): CheckDraft {
  return {
    kind: 'confirm',
    hints,
    id,
    stage: 'power_off',
    title,
    ask,
    why,
    evidence,
    caution: CAUTIONS.lockout,
  };
}

function connectionChecks({ supply }: CommissionInput): CheckDraft[] {
  const pole = supply.polarity === 'electrode_positive' ? 'positive' : 'negative';
  return [
    confirm(
      'polarity',
      'Polarity',
      `Follow the leads by hand: the electrode holder goes to the ${pole} terminal of every source, the plate to the other.`,
      'On the wrong pole the arc is unsteady and leaves carbon.',
      'polarity_wrong',
    ),
    confirm(
      'sense_wire',
      'Sense wire',
      `Follow the sense wire: it lands at "${supply.platePoint}", on a bolt or clamp of its own that carries no work current.`,
      'Landed elsewhere, it counts volts lost in leads as arc volts: the arc is held too short and the electrode may touch down.',
      'sense_wire_elsewhere',
    ),
    confirm(
      'joints_tight',
      'Joints',
      'Go along the connection schedule: every joint clean, metal to metal, tightened as its maker says, and marked.',
      'A joint that is not tight is a resistance: it heats and takes volts from the arc.',
      null,
      { unmet: 'A joint left loose or dirty: clean both faces, tighten, mark.' },
    ),
    confirm(
      'contact_jaws',
      'Contact jaws',
      'Look at the contact jaws: clean, not pitted, and the electrode sits firm in them.',
      'Worn jaws heat the electrode at a point and make the arc swing.',
      'contact_worn',
    ),
    confirm(
      'electrode_feed',
      'Electrode feed',
      'Jog the feed with the tip against a block of wood, hands clear of the rolls: the rolls grip without slipping.',
      'Rolls that slip let the arc grow long until they grip again.',
      'feed_slips',
    ),
  ];
}

function angleChecks(input: CommissionInput): CheckDraft[] {
  const { protractor } = input.instruments;
  return passesBy(input.plan, (pass) => pass.pushAngle).map(([angle, passes]) => ({
    kind: 'measure',
    id: `push_angle_${passes[0]!.number}`,
    stage: 'power_off',
    title: `Angle of the electrode, ${passNames(passes)}`,
    ask: 'Lay a protractor between electrode and plate, in the line of travel, electrode leaning to push.',
    caution: CAUTIONS.lockout,
    why: 'A flat electrode skims, a steep one digs deep and narrow.',
    evidence: 'push_angle',
    unit: 'deg',
    expected: angle,
    parts: [{ what: 'protractor and setting', figure: protractor, times: 1 }],
  }));
}

function reachChecks(input: CommissionInput): CheckDraft[] {
  const { stickOut, instruments, trial } = input;
  const height = stickOut.value * Math.sin(trial.pushAngle);
  const lean = stickOut.value * Math.cos(trial.pushAngle);
  const tape = { what: 'tape and setting', figure: instruments.tape, times: 1 };
  return [
    {
      kind: 'measure',
      id: 'stick_out',
      stage: 'power_off',
      title: 'Stick-out',
      ask: 'Measure the electrode from the contact jaws to its tip, tip on the plate.',
      caution: `${CAUTIONS.lockout} The electrode may still be hot.`,
      why: `Too long, the electrode heats and wags; too short, the head sits in the spray. Set length: ${stickOut.source}.`,
      evidence: 'stick_out',
      unit: 'mm',
      expected: stickOut.value,
      parts: [tape],
    },
    {
      kind: 'measure',
      id: 'torch_height',
      stage: 'power_off',
      title: 'Height of the torch',
      ask: 'Measure from the contact jaws straight down to the plate, at the start, the middle and the end of the seam; type the one furthest off.',
      caution: CAUTIONS.lockout,
      why: 'It is the stick-out times the sine of the angle; a height that changes along the seam shows a track out of line.',
      evidence: 'torch_height',
      unit: 'mm',
      expected: height,
      parts: [tape, { what: 'angle', figure: instruments.protractor, times: lean }],
    },
  ];
}

function controlChecks({ trial, plan, instruments, job }: CommissionInput): CheckDraft[] {
  const dwells = passesBy(plan, (pass) => pass.dwell);
  return [
    {
      kind: 'measure',
      id: 'gauge_zero',
      stage: 'power_off',
      title: 'Zero of the depth gauge',
      ask: 'Set the gauge on a flat plate and read it.',
      caution: null,
      why: 'What the gauge is off here, every reading of the groove is off as well.',
      evidence: 'gauge_zero',
      unit: 'mm',
      expected: 0,
      parts: [
        {
          what: 'one gauge reading, two standard deviations',
          figure: { value: job.kit.gauge.reading_sd, source: 'job file' },
          times: 2,
        },
      ],
    },
    {
      kind: 'measure',
      id: 'arc_volts_set',
      stage: 'power_off',
      title: 'Arc volts set',
      ask: 'Read the arc volts that the control is set to hold.',
      caution: null,
      why: 'The feed holds the length of the arc by these volts.',
      evidence: 'arc_volts_set',
      hints: { high: 'Set for another electrode or plan: the arc would be too long.' },
      unit: 'V',
      expected: trial.voltage,
      parts: [{ what: 'setting', figure: instruments.voltsSetting, times: 1 }],
    },
    ...dwells.map(
      ([dwell, passes]): CheckDraft => ({
        kind: 'measure',
        id: `start_dwell_${passes[0]!.number}`,
        stage: 'power_off',
        title: `Start dwell, ${passNames(passes)}`,
        ask: 'Read the wait between arc and travel at the control.',
        caution: null,
        why: 'Without it the first centimetre stays shallow.',
        evidence: 'start_dwell',
        hints: { high: 'Set for another plan: the start would dig too deep.' },
        unit: 's',
        expected: dwell,
        parts: [{ what: 'setting', figure: instruments.dwellSetting, times: 1 }],
      }),
    ),
  ];
}

/** Checks with everything switched off and locked out. */
export function settingChecks(input: CommissionInput): CheckDraft[] {
  return [...connectionChecks(input), ...angleChecks(input), ...reachChecks(input), ...controlChecks(input)];
}
