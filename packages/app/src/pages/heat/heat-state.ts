import type { HeatAnswer, HeatFrame } from '@furrow/engine';
import type { Planned } from '../../job/state/index.ts';
import type { HeatQuality } from '../../work/index.ts';

/** An answer and the plan and place it belongs to. */
export interface ShownHeat {
  readonly planned: Planned;
  /** Place of the section, as it was asked for [m]. */
  readonly station: number;
  readonly quality: HeatQuality;
  readonly heat: HeatAnswer;
  /** How long its grid took [ms]. */
  readonly took_ms: number;
}

/** How the newest request stands. */
export type HeatRunState =
  | { readonly is: 'waiting' }
  | { readonly is: 'running'; readonly quality: HeatQuality; readonly share: number }
  | { readonly is: 'done' }
  | { readonly is: 'stopped' }
  | { readonly is: 'nothing' }
  | { readonly is: 'failed'; readonly why: string };

/** Everything the page of heat shows beside the bench's own state. */
export interface HeatState {
  readonly shown: ShownHeat | undefined;
  readonly run: HeatRunState;
  /** Moment looked at; undefined until somebody chose one [s]. */
  readonly time: number | undefined;
  readonly playing: boolean;
}

/** The moment that is shown: the last one not after the time chosen, or the first after the last pass. */
export function momentOf({ heat }: ShownHeat, time: number | undefined): number {
  const { frames } = heat.field;
  if (time === undefined) {
    const last = heat.report.passes.at(-1)?.at_station_s.middle ?? 0;
    return Math.max(
      0,
      frames.findIndex((frame) => frame.time > last + SETTLED),
    );
  }
  return Math.max(
    0,
    frames.findLastIndex((frame) => frame.time <= time + 1e-6),
  );
}

/** Time after the last pass at which the heat has spread enough to be seen [s]. */
const SETTLED = 2;

/** The frame that is shown. */
export function frameOf(shown: ShownHeat, time: number | undefined): HeatFrame | undefined {
  return shown.heat.field.frames[momentOf(shown, time)];
}
