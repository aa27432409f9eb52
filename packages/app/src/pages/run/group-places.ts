import { fromUnit, type LogTrace, type RunReport, type Written } from '@furrow/engine';
import type { GroupPlaces } from './trace-pyramid.ts';
import type { StripAxis } from './use-strip-view.ts';

/** Where each group of rows lies: in time, or along the seam while a pass was run. */
export function groupPlaces(
  trace: LogTrace,
  { passes }: Pick<Written<RunReport>, 'passes'>,
  axis: StripAxis,
  number: number,
): GroupPlaces {
  if (axis === 'time') return trace.start;
  const places = new Float64Array(trace.start.length).fill(Number.NaN);
  const pass = passes.find((each) => each.number === number);
  if (pass === undefined || pass.from_mm === null || pass.to_mm === null) return places;
  const first = trace.start.findIndex((time) => time >= pass.start_s);
  let last = trace.start.findIndex((time) => time > pass.end_s) - 1;
  if (last < 0) last = trace.start.length - 1;
  if (first < 0 || last <= first) return places;
  const [from, to] = [fromUnit(pass.from_mm, 'mm'), fromUnit(pass.to_mm, 'mm')];
  const ran = trace.way[last]! - trace.way[first]!;
  for (let group = first; group <= last; group += 1)
    places[group] = from + ((trace.way[group]! - trace.way[first]!) / (ran || 1)) * (to - from);
  return places;
}
