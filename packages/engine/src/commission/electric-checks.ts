import { amountOf, say } from '../quantity/index.ts';
import { CAUTIONS } from './cautions.ts';
import { itemVolts, type PointVolts } from './circuit-volts.ts';
import type { CommissionInput } from './commission-input.ts';
import type { CommissionItem } from './commission-supply.ts';
import type { CheckDraft, DraftPart } from './draft.ts';

/** A joint may have this many times its expected resistance before it counts as loose, where nothing is stated [-]. */
const LOOSE_FROM = 2;

function meter({ instruments }: CommissionInput, volts: number): DraftPart[] {
  return [
    { what: 'meter, share of the reading', figure: instruments.voltmeterShare, times: volts },
    { what: 'meter, last digits', figure: instruments.voltmeterDigits, times: 1 },
  ];
}

/** What is lost follows the current that the source gives. */
function lossParts({ instruments }: CommissionInput, lost: number): DraftPart[] {
  return [
    { what: 'loss in leads and joints', figure: instruments.lossShare, times: lost },
    { what: 'current of the source against its setting', figure: instruments.currentShare, times: lost },
  ];
}

/** Leads cold: they lose more when they are warm. */
const COLD = 'Leads cold, within the first minute of arc';

/** The stop with the source on: it must take the volts away. */
function stopCheck(): CheckDraft {
  return {
    kind: 'confirm',
    id: 'emergency_stop_volts',
    stage: 'no_load',
    title: 'Emergency stop, sources on',
    ask: 'With all sources on and no arc, press each emergency stop: the volts at every source fall to nothing and stay there until it is reset.',
    caution: `${CAUTIONS.live} If one does not work, no arc is struck.`,
    why: 'A stop that only halts the carriage leaves the electrode live.',
    evidence: null,
    hints: { unmet: 'No arc is struck until every stop takes the volts away.' },
  };
}

/** No-load volts at the terminals of each source and at each point of the electrode side. */
export function noLoadChecks(input: CommissionInput, points: readonly PointVolts[]): CheckDraft[] {
  const { supply, instruments } = input;
  const hints = {
    low: 'A break or a wrong connection on the way; with a minus sign, poles or meter leads the wrong way round.',
    high: 'Another range or source switched on than the one worked out.',
  };
  const facts = { kind: 'measure', stage: 'no_load', caution: CAUTIONS.live, unit: 'V', hints } as const;
  const reading = (volts: number): { expected: number; parts: DraftPart[] } => ({
    expected: volts,
    parts: [
      { what: 'no-load volts of the source', figure: instruments.noLoadShare, times: volts },
      ...meter(input, volts),
    ],
  });
  const terminals = new Map(supply.sources.map((source) => [source.electrodePoint, source.noLoadVoltage]));
  // With no current nothing is lost: a point shows the greatest of the sources switched on.
  const greatest = Math.max(...terminals.values());
  return [
    ...supply.sources.map(
      (source, place): CheckDraft => ({
        ...facts,
        id: `no_load_source_${place + 1}`,
        title: `No-load volts, ${source.name}`,
        ask: `Only ${source.name} on, no arc: read the volts from "${source.electrodePoint}" to "${source.workPoint}".`,
        why: 'Too few, and the arc does not start or goes out.',
        evidence: 'no_load_volts',
        ...reading(source.noLoadVoltage),
      }),
    ),
    ...points
      .filter(({ point, side }) => side === 'electrode' && !terminals.has(point))
      .map(
        ({ point }, place): CheckDraft => ({
          ...facts,
          id: `no_load_point_${place + 1}`,
          title: `No-load volts, ${point}`,
          ask: `All sources on, no arc: read the volts from "${point}" to "${supply.platePoint}".`,
          why: 'With no current nothing is lost on the way: fewer volts show a break or a wrong connection.',
          evidence: 'no_load_volts',
          ...reading(greatest),
        }),
      ),
    stopCheck(),
  ];
}

function currentCheck(input: CommissionInput): CheckDraft {
  const amps = input.trial.current;
  const { clampShare, currentShare } = input.instruments;
  return {
    kind: 'measure',
    id: 'current',
    stage: 'trial_arc',
    title: 'Current',
    ask: 'Trial arc on scrap, set as the pass: read the current with a clamp meter for direct current around all electrode leads.',
    caution: CAUTIONS.arc,
    why: 'The depth follows the current; the dial of a source may be off.',
    evidence: 'current',
    hints: { high: 'The source is set above the plan, or the clamp is not at its zero.' },
    unit: 'A',
    expected: amps,
    parts: [
      { what: 'clamp meter', figure: clampShare, times: amps },
      { what: 'setting of the source', figure: currentShare, times: amps },
    ],
  };
}

function loadedCheck({ point, side, lost }: PointVolts, place: number, input: CommissionInput): CheckDraft {
  const { supply, trial, instruments } = input;
  const electrode = side === 'electrode';
  const atHolder = point === supply.holderPoint;
  const volts = electrode ? trial.voltage + lost : lost;
  const swing = { what: 'swing of the arc', figure: instruments.arcSwing, times: 1 };
  return {
    kind: 'measure',
    id: `loaded_${side}_${place + 1}`,
    stage: 'trial_arc',
    title: `Loaded volts, ${point}`,
    ask: `${COLD}: read the volts ${electrode ? `from "${point}" to "${supply.platePoint}"` : `from "${supply.platePoint}" to "${point}"`}.`,
    caution: CAUTIONS.arc,
    why: atHolder
      ? 'These are the volts the arc has.'
      : say`${amountOf(lost, 'voltage')} of it are lost in leads and joints between here and the arc.`,
    evidence: atHolder ? 'arc_volts' : 'lead_volts',
    unit: 'V',
    expected: volts,
    parts: [...(electrode ? [swing] : []), ...lossParts(input, lost), ...meter(input, volts)],
  };
}

function terminalChecks(input: CommissionInput, points: readonly PointVolts[]): CheckDraft[] {
  const { supply, trial, instruments } = input;
  const lostAt = new Map(points.map(({ point, lost }) => [point, lost]));
  return supply.sources.map((source, place) => {
    const lost = lostAt.get(source.electrodePoint)! + lostAt.get(source.workPoint)!;
    const volts = trial.voltage + lost;
    return {
      kind: 'measure',
      id: `loaded_source_${place + 1}`,
      stage: 'trial_arc',
      title: `Loaded volts, ${source.name}`,
      ask: `${COLD}: read the volts from "${source.electrodePoint}" to "${source.workPoint}".`,
      caution: CAUTIONS.arc,
      why: say`${amountOf(trial.voltage, 'voltage')} for the arc and ${amountOf(lost, 'voltage')} for leads and joints.`,
      evidence: 'terminal_volts',
      unit: 'V',
      expected: volts,
      parts: [
        { what: 'swing of the arc', figure: instruments.arcSwing, times: 1 },
        ...lossParts(input, lost),
        ...meter(input, volts),
      ],
    };
  });
}

function senseCheck(input: CommissionInput): CheckDraft {
  const volts = input.trial.voltage;
  return {
    kind: 'measure',
    id: 'sense_difference',
    stage: 'trial_arc',
    title: 'Displayed less measured arc volts',
    ask: `Trial arc burning: take the volts from "${input.supply.holderPoint}" to "${input.supply.platePoint}" off the displayed arc volts, both read at the same moment.`,
    caution: CAUTIONS.arc,
    why: 'A sense wire landed elsewhere counts volts lost in leads as arc volts.',
    evidence: 'sense_difference',
    hints: { low: 'The display or the meter is off: compare both on one source of known volts.' },
    unit: 'V',
    expected: 0,
    parts: [...meter(input, volts), ...meter(input, volts)],
  };
}

function jointCheck(joint: CommissionItem, input: CommissionInput): CheckDraft {
  const { instruments, supply, trial } = input;
  const volts = itemVolts(joint, supply, trial.current);
  const most = joint.resistanceMost ?? LOOSE_FROM * joint.resistance;
  const mostVolts = itemVolts({ ...joint, resistance: most }, supply, trial.current);
  const amps = (joint.current * trial.current) / supply.setCurrent;
  const limit =
    joint.resistanceMost === undefined
      ? 'twice what is expected: judgement, no source'
      : 'twice what is expected, or less where its heat would be too much for the lead';
  return {
    kind: 'measure',
    id: `joint_${joint.id}`,
    stage: 'trial_arc',
    title: `Joint, ${joint.name}`,
    ask: `Trial arc burning: read the millivolts across the joint, from metal of "${joint.from}" to metal of "${joint.to}", not from bolt to bolt.`,
    caution: CAUTIONS.arc,
    why: say`At ${amountOf(amps, 'current')} a loose joint of twice the upper end makes ${Math.round(2 * mostVolts * amps)} W of heat (upper end: ${limit}).`,
    evidence: 'joint_millivolts',
    hints: { low: 'Meter leads the wrong way round.' },
    unit: 'mV',
    expected: volts,
    span: { least: 0, most: Math.max(volts, mostVolts) },
    parts: [
      { what: 'meter, share of the reading', figure: instruments.voltmeterShare, times: mostVolts },
      { what: 'meter, last digits', figure: instruments.millivoltDigits, times: 1 },
      {
        what: 'current of the source against its setting',
        figure: instruments.currentShare,
        times: mostVolts,
      },
    ],
  };
}

/** Current, volts at each point and millivolts across each joint, with a trial arc on scrap. */
export function trialArcChecks(input: CommissionInput, points: readonly PointVolts[]): CheckDraft[] {
  const { supply } = input;
  const terminals = supply.sources.map(({ electrodePoint }) => electrodePoint);
  const between = points.filter(({ point }) => !terminals.includes(point) && point !== supply.platePoint);
  return [
    currentCheck(input),
    ...terminalChecks(input, points),
    ...between.map((point, place) => loadedCheck(point, place, input)),
    senseCheck(input),
    ...supply.items.filter(({ kind }) => kind === 'joint').map((joint) => jointCheck(joint, input)),
  ];
}
