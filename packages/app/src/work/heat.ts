import { type Answer, answerHeat, type HeatAnswer, type ReadJob } from '@furrow/engine';
import { learnedFrom } from './learned-from.ts';
import type { WorkerLink, WorkStep } from './protocol.ts';

/** A planned job whose heat is asked for. */
export interface HeatRequest {
  readonly read: ReadJob;
  readonly answer: Answer;
  /** Place of the section from the start of the seam [m]. */
  readonly station: number;
  /** Text of the trials that the answer was made with. */
  readonly knowledge?: string | undefined;
}

/** Grids that are run: first a coarse look, then one whose error was estimated. */
const HEAT_QUALITIES = ['quick', 'refined'] as const;
export type HeatQuality = (typeof HEAT_QUALITIES)[number];

/** The answer of one grid. */
export interface HeatPart {
  readonly quality: HeatQuality;
  readonly heat: HeatAnswer;
  /** How long this grid took [ms]. */
  readonly took_ms: number;
}

/** The worker that solves the heat. */
export type HeatWorker = WorkerLink<HeatRequest, HeatPart>;

/** What solving uses; a test hands in tools of its own. */
export interface HeatTools {
  /** Yields the share done, returns the answer, or null where there is no plan that heats anything. */
  readonly solve: (...question: Parameters<typeof answerHeat>) => Generator<number, HeatAnswer | null>;
  /** A clock that only goes forward [ms]. */
  readonly now: () => number;
}

const TOOLS: HeatTools = { solve: answerHeat, now: () => performance.now() };

/** The answer of each grid, with the share done on the way there; no part where there is no plan. */
export function* heatParts(
  { read, answer, station, knowledge: trials }: HeatRequest,
  { solve, now }: HeatTools = TOOLS,
): Generator<WorkStep<HeatPart>> {
  const knowledge = learnedFrom(trials);
  for (const quality of HEAT_QUALITIES) {
    const began = now();
    const steps = solve(read, answer, { station, quality, knowledge });
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) yield { is: 'progress', share: step.value };
    if (step.value === null) return;
    yield { is: 'part', part: { quality, heat: step.value, took_ms: now() - began } };
  }
}

/** The memory of the field, which a worker can hand over. */
export function fieldBuffers({ heat: { field } }: HeatPart): ArrayBuffer[] {
  const lists = [
    field.across,
    field.below,
    ...field.frames.flatMap(({ temperature, floor }) => [temperature, floor]),
  ];
  return [...new Set(lists.map(({ buffer }) => buffer))].filter((buffer) => buffer instanceof ArrayBuffer);
}
