import { fromUnit } from '@furrow/engine';
import { useMemo, useState } from 'preact/hooks';
import type { ShownRun } from './run-state.ts';

/** Along what the strip is drawn. */
export type StripAxis = 'seam' | 'time';

/** Goes to a stretch on the strip. */
export interface ShowStretch {
  /** By place [mm], in a pass where one is named. */
  readonly place: (from: number, to: number, pass: number | null) => void;
  /** By elapsed time [s]. */
  readonly time: (from: number, to: number) => void;
}

/** What of the log is looked at. */
export interface StripView {
  readonly axis: StripAxis;
  /** Number of the pass whose readings are drawn along the seam. */
  readonly pass: number;
  /** Ends of what is seen, and of all there is: m along the seam, s in time. */
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
  readonly cursor: number;
  readonly hasPlaces: boolean;
  readonly setAxis: (axis: StripAxis) => void;
  readonly setPass: (pass: number) => void;
  readonly setCursor: (at: number) => void;
  /** Zooms about a place; a factor below 1 zooms in. */
  readonly zoom: (factor: number, about: number) => void;
  /** Moves by a share of what is seen. */
  readonly pan: (share: number) => void;
  readonly whole: () => void;
  readonly show: ShowStretch;
}

/** Room beside a stretch that is shown, as a share of it; and least of what is seen. */
const ROOM = 4;
const SEEN_LEAST = { seam: 0.005, time: 0.05 } as const;

/** Axis, zoom and cursor of the strip; all of it is shown at first. */
export function useStripView({ report, trace }: ShownRun): StripView {
  const hasPlaces = report.passes.some(({ from_mm: from }) => from !== null);
  const ends = useMemo(() => {
    const places = report.passes.flatMap(({ from_mm: from, to_mm: to }) =>
      from === null || to === null ? [] : [fromUnit(from, 'mm'), fromUnit(to, 'mm')],
    );
    const length = report.wanted === null ? [] : [0, fromUnit(report.wanted.length_mm, 'mm')];
    return {
      seam: [Math.min(...places, ...length), Math.max(...places, ...length)] as const,
      time: [trace.start[0] ?? 0, trace.end.at(-1) ?? 1] as const,
    };
  }, [report, trace]);
  const [axisWanted, setAxis] = useState<StripAxis>('seam');
  const axis = hasPlaces ? axisWanted : 'time';
  const [pass, setPass] = useState(1);
  const [seen, setSeen] = useState<Partial<Record<StripAxis, readonly [number, number]>>>({});
  const [cursors, setCursors] = useState<Partial<Record<StripAxis, number>>>({});
  const [least, most] = ends[axis];
  const [from, to] = seen[axis] ?? [least, most];
  const look = (a: number, b: number, on = axis): void => {
    const [low, high] = ends[on];
    const span = Math.min(high - low, Math.max(SEEN_LEAST[on], b - a));
    const start = Math.min(high - span, Math.max(low, (a + b - span) / 2));
    setSeen((before) => ({ ...before, [on]: [start, start + span] }));
  };
  const goTo = (a: number, b: number, on: StripAxis): void => {
    const room = Math.max(ROOM * (b - a), 10 * SEEN_LEAST[on]);
    look(a - room, b + room, on);
    setCursors((before) => ({ ...before, [on]: (a + b) / 2 }));
  };
  return {
    axis,
    pass: report.passes.some(({ number }) => number === pass) ? pass : (report.passes[0]?.number ?? 1),
    from,
    to,
    least,
    most,
    cursor: Math.min(most, Math.max(least, cursors[axis] ?? (least + most) / 2)),
    hasPlaces,
    setAxis,
    setPass,
    setCursor: (at) => setCursors((before) => ({ ...before, [axis]: at })),
    zoom: (factor, about) => look(about - (about - from) * factor, about + (to - about) * factor),
    pan: (share) => look(from + share * (to - from), to + share * (to - from)),
    whole: () => setSeen((before) => ({ ...before, [axis]: [least, most] })),
    show: {
      place: (a, b, inPass) => {
        if (inPass !== null) setPass(inPass);
        setAxis('seam');
        goTo(fromUnit(a, 'mm'), fromUnit(b, 'mm'), 'seam');
      },
      time: (a, b) => {
        setAxis('time');
        goTo(a, b, 'time');
      },
    },
  };
}
