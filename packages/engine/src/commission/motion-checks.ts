import { amountOf, say } from '../quantity/index.ts';
import { lossLength } from '../removal/index.ts';
import { CAUTIONS } from './cautions.ts';
import type { CommissionInput } from './commission-input.ts';
import { passesBy, passNames } from './commission-input.ts';
import type { CheckDraft } from './draft.ts';

/**
 * Lengths a shop marks out, whole inches and whole millimetres at once [m]: a time that was taken means the same in
 * whatever units it is read.
 */
const MARKED: readonly number[] = [0.127, 0.254, 0.508, 1.27, 2.54, 5.08];
/** The watch may take this share of the time at most, if the seam is long enough [-]. */
const WATCH_SHARE_MOST = 0.02;

/** The shortest marked length over which the watch is good enough; the longest on the seam where none is. */
function measuredLength(travel: number, { job, instruments }: CommissionInput): number {
  const onSeam = MARKED.filter((length) => length <= job.seam.length);
  const enough = onSeam.find((length) => instruments.watch.value <= WATCH_SHARE_MOST * (length / travel));
  return enough ?? onSeam.at(-1) ?? job.seam.length;
}

function travelChecks(input: CommissionInput): CheckDraft[] {
  const { watch, marks, travelShare } = input.instruments;
  return passesBy(input.plan, (pass) => pass.travel).map(([travel, passes]) => {
    const length = measuredLength(travel, input);
    const seconds = length / travel;
    const gauged = passes.some((pass) => pass.setByGauge)
      ? ' The card’s table may set another travel after gauging; time that one in the same way.'
      : '';
    return {
      kind: 'measure',
      id: `travel_time_${passes[0]!.number}`,
      stage: 'dry_run',
      title: `Travel, ${passNames(passes)}`,
      ask: say`Mark ${amountOf(length, 'length')} on the seam. Run the carriage at ${amountOf(travel, 'speed')} and time it from mark to mark, running before the first.${gauged}`,
      caution: CAUTIONS.moving,
      why: say`${amountOf(length, 'length')} at ${amountOf(travel, 'speed')} takes ${seconds.toFixed(1)} s.`,
      evidence: 'travel_time',
      unit: 's',
      expected: seconds,
      parts: [
        { what: 'watch started and stopped by hand', figure: watch, times: 1 },
        { what: 'marks', figure: marks, times: 1 / travel },
        { what: 'steadiness of the carriage', figure: travelShare, times: seconds },
      ],
    } satisfies CheckDraft;
  });
}

function trackCheck(input: CommissionInput): CheckDraft {
  return {
    kind: 'confirm',
    id: 'track_on_seam',
    stage: 'dry_run',
    title: 'Track',
    ask: say`Run the carriage over ${amountOf(input.job.seam.length, 'length')} of seam with a pointer in the holder: it stays on the line, leads and hoses follow without pulling.`,
    caution: CAUTIONS.moving,
    why: 'The carriage follows its track, not the seam.',
    evidence: 'track_off_seam',
  };
}

function emergencyStop(): CheckDraft {
  return {
    kind: 'confirm',
    id: 'emergency_stop',
    stage: 'dry_run',
    title: 'Emergency stop',
    ask: 'With the carriage running and the arc power off, press each emergency stop: travel and feed stop at once, the source cannot be switched on until it is reset.',
    caution: `${CAUTIONS.moving} If one does not work, no arc is struck.`,
    why: 'It is the only thing that stops everything.',
    evidence: null,
    hints: { unmet: 'No arc is struck until every stop works.' },
  };
}

/** Runs on after the arc is lost: tried in the trial arc. */
export function lossWindowCheck(input: CommissionInput): CheckDraft {
  const { job, instruments, trial } = input;
  const travel = trial.travel;
  const length = lossLength(travel, job.kit.loss_window);
  return {
    kind: 'measure',
    id: 'loss_window',
    hints: {
      low: 'The control stops sooner than set: it may stop at a mere flicker of the arc.',
      high: 'The window is set longer, or the carriage runs on when it should stand.',
    },
    stage: 'trial_arc',
    title: 'Loss window',
    ask: 'On scrap, with the arc burning and the carriage moving, switch the source off by its remote switch. Measure from the end of the groove to where the electrode stands.',
    caution: CAUTIONS.arc,
    why: say`The carriage may run on for ${amountOf(job.kit.loss_window, 'time')}: what it passes in that time stays ungouged.`,
    evidence: null,
    unit: 'mm',
    expected: length,
    parts: [
      { what: 'loss window of the control', figure: instruments.lossShareOfWindow, times: length },
      { what: 'end of the groove', figure: instruments.marks, times: 1 },
    ],
  };
}

/** Checks with the carriage running and no arc. */
export function motionChecks(input: CommissionInput): CheckDraft[] {
  return [emergencyStop(), trackCheck(input), ...travelChecks(input)];
}
