import { gougingStart } from '../heat/index.ts';
import { amountOf, boundOf, say } from '../quantity/index.ts';
import { CAUTIONS } from './cautions.ts';
import type { CommissionInput } from './commission-input.ts';
import type { CheckDraft } from './draft.ts';

/** How far below what the figures assume a plate may be before they no longer hold [K]; judgement, no source. */
const COLDER = 15;

/** The plate beside the seam before the first arc: at least the preheat, at most what a pass may start at. */
export function plateCheck(input: CommissionInput): CheckDraft {
  const { job, instruments } = input;
  const start = gougingStart(job);
  const { interpass_most: most } = job.heat;
  const at = start.stated
    ? boundOf(start.temperature, 'temperature', 'least')
    : amountOf(start.temperature, 'temperature');
  return {
    kind: 'measure',
    id: 'plate_temperature',
    stage: 'trial_arc',
    title: start.stated ? 'Preheat of the plate' : 'Temperature of the plate',
    ask: say`Contact thermometer on the plate beside the seam, at the start, the middle and the end, just before the first arc on the seam: type the one furthest off. ${start.stated ? 'At least ' : 'None is stated; the figures assume '}${at}, at most ${boundOf(most, 'temperature', 'most')}; so again before each further pass.`,
    caution: CAUTIONS.arc,
    why: `A colder plate hardens and can crack, and the depth is worked out for this one (${start.source.text}).`,
    evidence: null,
    hints: {
      low: 'Preheat until the whole length is warm enough, and measure again.',
      high: 'Wait until the plate has cooled below the interpass temperature.',
    },
    unit: 'degC',
    expected: start.temperature,
    span: {
      least: start.stated ? start.temperature : start.temperature - COLDER,
      most: Math.max(start.temperature, most),
    },
    floor: start.stated ? start.temperature : start.temperature - COLDER,
    ceiling: Math.max(start.temperature, most),
    parts: [{ what: 'contact thermometer', figure: instruments.thermometer, times: 1 }],
  };
}
