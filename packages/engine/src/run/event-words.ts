import { amountOf, type Sentence, say } from '../quantity/index.ts';
import type { EventKind } from './outcome.ts';

/** What the words of an event rest on, beside its kind; SI. */
export interface EventFacts {
  readonly duration: number;
  /** Way covered meanwhile [m]. */
  readonly way?: number | undefined;
  /** Value read, and the one it is held against, in SI. */
  readonly value?: number | undefined;
  readonly against?: number | undefined;
  /** Nothing tells an electrode change from the start of the next pass. */
  readonly orPass?: boolean;
  /** Which reading, where more than one can show the event. */
  readonly reading?: 'voltage' | 'current' | 'air_pressure' | 'air_flow' | 'position';
}

/** Way from which an ungouged stretch is worth a recut [m]: judgement, no source. */
const LEFT_LEAST = 0.002;

const time = (seconds: number) => amountOf(seconds, 'time');

/** Says in words what an event is; its place and time stand beside it. */
export function eventWords(kind: EventKind, facts: EventFacts): Sentence {
  const { duration, way, value = 0, against = 0 } = facts;
  const left =
    way !== undefined && way > LEFT_LEAST ? say`; ${amountOf(way, 'depth')} are not gouged, recut them` : '';
  switch (kind) {
    case 'touch_down':
      return say`The electrode touched down for ${time(duration)} to strike the arc.`;
    case 'arc_out':
      return say`The arc was out ${time(duration)}${left}.`;
    case 'short':
      return say`The electrode was on the plate for ${time(duration)}${left}.`;
    case 'restart_short':
      return say`The electrode was on the plate for ${time(duration)} before the arc burned again.`;
    case 'electrode_change':
      return facts.orPass === true
        ? say`No arc for ${time(duration)}: an electrode change, or the next pass.`
        : say`Electrode change: no arc for ${time(duration)}${left}.`;
    case 'voltage_drift':
      return say`The arc voltage left its window: ${amountOf(value, 'voltage')} on the mean where ${amountOf(against, 'voltage')} is meant.`;
    case 'current_drift':
      return say`The current drifted: ${amountOf(value, 'current')} on the mean where ${amountOf(against, 'current')} is meant.`;
    case 'stall':
      return say`The carriage stood for ${time(duration)} with the arc burning: the groove is too deep here, gauge it.`;
    case 'slip':
      return say`The wheel counted ${amountOf(value, 'length')} while the carriage covered ${amountOf(against, 'length')}.`;
    case 'low_air':
      return facts.reading === 'air_flow'
        ? say`The air flow was down to ${amountOf(value, 'air_flow')} for ${time(duration)}, from ${amountOf(against, 'air_flow')}: look for slag left in the groove.`
        : say`The air pressure was down to ${amountOf(value, 'pressure')} for ${time(duration)}, from ${amountOf(against, 'pressure')}: look for slag left in the groove.`;
    case 'feed_stop':
      return say`The electrode did not feed for ${time(duration)} with the arc burning.`;
    case 'gap':
      return say`The logger was silent for ${time(duration)}: what the arc did then is not known.`;
    case 'clock_step':
      return say`The clock of the logger moved by ${time(Math.abs(value))}.`;
    case 'stale_reading':
      return say`The ${facts.reading ?? 'reading'} stood still for ${time(duration)}: it is an old reading, not a steady one.`;
    case 'spike':
      return spikeWords(facts.reading, value, against);
  }
}

function spikeWords(reading: EventFacts['reading'], value: number, against: number): Sentence {
  const tail = 'too short for the arc, so the instrument or its wiring; it is left out of the sums';
  if (reading === 'position')
    return say`The position jumped by ${amountOf(Math.abs(value), 'length')} and back: ${tail}.`;
  const kind = reading === 'voltage' ? 'voltage' : 'current';
  return say`The ${kind} read ${amountOf(value, kind)} among ${amountOf(against, kind)}: ${tail}.`;
}
