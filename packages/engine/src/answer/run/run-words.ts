import { amountOf, joinSentences, type Sentence, say } from '../../quantity/index.ts';
import type { RemainingPasses } from '../../result/index.ts';
import type { Judged, RunOutcome, SeamStretch } from '../../run/index.ts';
import type { Fit } from './fit-of-job.ts';

/** What the verdict of a run is told from. */
export interface RunTold {
  readonly outcome: RunOutcome;
  readonly judged: Judged | undefined;
  readonly stretches: readonly SeamStretch[];
  readonly used: number | undefined;
  readonly planned: number | undefined;
  readonly fit: Fit | undefined;
  readonly remaining: RemainingPasses | undefined;
  readonly rehearsal: boolean;
}

/** Stretches told one by one in the verdict [-]; the list holds them all. */
const STRETCHES_TOLD = 8;

/** The run in words, what matters most first. */
export function verdictOf({
  outcome,
  judged,
  stretches,
  used,
  planned,
  fit,
  remaining,
  rehearsal,
}: RunTold): Sentence[] {
  const { totals, passes } = outcome;
  if (passes.length === 0)
    return [
      ...(rehearsal ? [REHEARSED] : []),
      outcome.strikes > 0
        ? say`No pass was run: the arc was tried ${outcome.strikes} times and did not burn on.`
        : say`No arc burns in this log.`,
    ];
  return [
    ...(rehearsal ? [REHEARSED] : []),
    ...(fit?.fits === false
      ? [say`This log seems to be of another job: ${joinSentences(fit.says, '; ')}.`]
      : []),
    joinSentences(
      [
        judged === undefined
          ? say`${passes.length} ${passes.length === 1 ? 'pass' : 'passes'} run`
          : say`${passes.length} of ${judged.plan.passes.length} planned passes run`,
        say`the arc burned ${amountOf(totals.arcTime, 'time')}`,
        ...(totals.arcOutTime > 0 ? [say`and was out ${amountOf(totals.arcOutTime, 'time')}`] : []),
        ...(totals.energy === undefined ? [] : [say`with ${amountOf(totals.energy, 'energy')}`]),
        ...(used === undefined
          ? []
          : [
              planned === undefined
                ? say`${amountOf(used, 'length')} of electrode used`
                : say`${amountOf(used, 'length')} of electrode used where ${amountOf(planned, 'length')} were planned`,
            ]),
      ],
      ', ',
    ),
    ...stretchWords(stretches, judged !== undefined),
    ...(remaining === undefined ? [] : [remaining.says]),
  ].map((sentence) => ended(sentence));
}

const REHEARSED = 'A rehearsal: these readings were made up, no rig was run.';

function stretchWords(stretches: readonly SeamStretch[], hasPlan: boolean): Sentence[] {
  if (!hasPlan) return [];
  if (stretches.length === 0)
    return ['The log shows no stretch ungouged, shallow or deep; the gauge has the last word'];
  const more = stretches.length - STRETCHES_TOLD;
  return [
    ...stretches.slice(0, STRETCHES_TOLD).map(({ says }) => says),
    ...(more > 0 ? [say`${more} more stretches stand in the list`] : []),
  ];
}

function ended(sentence: Sentence): Sentence {
  const last = typeof sentence === 'string' ? sentence : sentence.say.at(-1);
  return typeof last === 'string' && /[.!?]$/u.test(last) ? sentence : say`${sentence}.`;
}

/** What the log cannot tell, and what would. */
export function cannotTell({ channels, way, interval }: RunOutcome, hasPlan: boolean): Sentence[] {
  const has = (channel: (typeof channels)[number]): boolean => channels.includes(channel);
  const says: Sentence[] = [];
  if (!has('voltage_V')) says.push('Arc voltage, energy and shorts: the log has no voltage.');
  if (!has('current_A')) says.push('Current and energy: the log has no current.');
  if (way === 'none')
    says.push(
      'Places on the seam: the log has neither travel nor position, and no job says the travel that was set.',
    );
  if (way === 'arc_time')
    says.push(
      'Stall and slip: the log has neither travel nor position; places are arc time at the set travel.',
    );
  if (way === 'travel')
    says.push('Slip along the way: only the wheel is read, and the seam’s known length anchors it.');
  if (!has('feed_m_per_s')) says.push('Whether the electrode fed: the log has no feed.');
  if (!has('air_pressure_Pa') && !has('air_flow_m3_per_s'))
    says.push('Whether the air held: the log has no air.');
  if (has('voltage_V') && has('current_A') && interval > 1e-3)
    says.push(
      say`The energy to the last per cent: a row every ${amountOf(interval, 'time')} does not follow the ripple of the current, so that the product of volts and amps misses what swings together.`,
    );
  says.push(
    hasPlan
      ? 'How deep the groove is: the depth is predicted from volts, amps and travel. Gauge it.'
      : 'Depth and what was planned: name the job that was run.',
  );
  return says;
}
