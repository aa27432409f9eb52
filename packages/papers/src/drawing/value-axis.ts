import { niceStep } from './nice-step.ts';

/** Values on an axis, in the unit they are shown in. */
export interface ValueAxis {
  /** Ends of the axis [see unit]. */
  readonly from: number;
  readonly to: number;
  /** Places of its ticks [see unit]. */
  readonly ticks: readonly number[];
  /** Decimals that tell neighbouring ticks apart [-]. */
  readonly decimals: number;
}

/** Lays an axis over all values with ticks at steps a person counts in; its ends are ticks. */
export function valueAxis(values: readonly number[], ticksMost: number): ValueAxis {
  const finite = values.filter((value) => Number.isFinite(value));
  const least = finite.length === 0 ? 0 : Math.min(...finite);
  const most = finite.length === 0 ? 1 : Math.max(...finite);
  const span = Math.max(most - least, Math.abs(most) * 1e-6, 1e-9);
  const step = niceStep(span / Math.max(1, ticksMost));
  const first = Math.floor(least / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(most / step - 1e-9));
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
  return {
    from: first * step,
    to: last * step,
    ticks,
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

/** Writes a tick's value, without the unit. */
export function tickText({ decimals }: ValueAxis, value: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? '0' : text.replace('-', '−');
}

/** Share of the axis below a value, kept between its ends [-]. */
export function axisShare({ from, to }: ValueAxis, value: number): number {
  return Math.min(1, Math.max(0, (value - from) / (to - from)));
}
