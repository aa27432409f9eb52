import type { ShopFigures } from '@furrow/contract';
import { answerKnowledge, readReadings, readTrials } from '@furrow/engine';

/** The texts that a shop is told by. */
export interface FiguresAsked {
  /** The newest record of each job that has one. */
  readonly readings: readonly string[];
  readonly trials: string | undefined;
}

/** What they tell. */
export type WorkedFigures = Pick<
  ShopFigures,
  'gauged_jobs' | 'recut_jobs' | 'recuts' | 'knowledge' | 'unreadable'
>;

/** Counts what was gauged and cut again, and says how the shop's predictions fared. Records made up to try the program with do not count. */
export function figuresOf({ readings, trials }: FiguresAsked): WorkedFigures {
  const figures = { gauged_jobs: 0, recut_jobs: 0, recuts: 0, unreadable: 0 };
  for (const text of readings) {
    if (text.trim() === '') continue;
    const read = readReadings(text);
    if (!read.ok) {
      figures.unreadable += 1;
      continue;
    }
    const { recuts = [], stations = [], files = [], invented } = read.value.readings;
    if (invented !== undefined) continue;
    if (stations.length + files.length + recuts.length > 0) figures.gauged_jobs += 1;
    if (recuts.length > 0) figures.recut_jobs += 1;
    figures.recuts += recuts.length;
  }
  const known = trials === undefined ? undefined : readTrials(trials);
  if (known?.ok !== true) return { ...figures, knowledge: null };
  const { knowledge, scores, drift } = answerKnowledge(known.value);
  return {
    ...figures,
    knowledge: {
      trials: knowledge.trials,
      jobs: knowledge.jobs,
      date: knowledge.date,
      predictions: scores.predictions,
      inside_90: scores.inside_90,
      drift_sum: drift.sum,
      drift_limit: drift.limit,
      drift_says: drift.says,
    },
  };
}
