import type { CostReport, CostStep } from '@furrow/engine';
import { money, sharePercent, workTime } from '../words/index.ts';
import type { Drawing, DrawingPoint, Mark, MarkRole } from './drawing.ts';
import { hatch } from './hatch.ts';
import { textWidth } from './text-width.ts';

/** What is drawn, and how large. */
export interface CostDrawingInput {
  readonly cost: Pick<CostReport, 'steps' | 'currency' | 'priced'>;
  /** Width [drawing unit], at least 320. */
  readonly width: number;
}

/** What one column of bars tells of a step. */
interface Column {
  readonly title: string;
  readonly of: (step: CostStep) => CostStep['cost'];
  readonly words: (step: CostStep) => string;
  readonly filled: boolean;
}

/** A column at its place. */
interface PlacedColumn extends Column {
  /** Left end of the bars [drawing unit]. */
  readonly left: number;
  /** Length of the longest bar [drawing unit]. */
  readonly length: number;
  /** Greatest 90th percentile, which the longest bar stands for [unit of the column]. */
  readonly most: number;
}

/** Steps that take nothing at all are left out. */
function shownSteps(steps: readonly CostStep[]): readonly CostStep[] {
  return steps.filter((step) => step.time_s.mean > 0 || step.cost.mean > 0);
}

/**
 * Draws where minutes and money go: one row per step of the cycle, a filled bar for time and, where there are prices, a
 * hatched one for money, each up to its median with a whisker to the 90th percentile, and the figures in words behind it.
 */
export function costDrawing({ cost, width: wanted }: CostDrawingInput): Drawing {
  const width = Math.max(320, wanted);
  const size = Math.min(13, Math.max(8, width / 62));
  const steps = shownSteps(cost.steps);
  const row = 2.1 * size;
  const top = 2.6 * size;
  const height = top + Math.max(1, steps.length) * row + 0.6 * size;
  const told = columnsOf(cost);
  const columns = placed(told, steps, width, size);
  const rows = steps.map((step) => `${step.title}: ${told.map(({ words }) => words(step)).join('; ')}`);
  return {
    width,
    height,
    title: cost.priced ? 'Where minutes and money go' : 'Where the minutes go',
    description: `${cost.priced ? 'Time and money' : 'Time'} of each step, on average, with its part of the whole. ${rows.join('. ')}.`,
    marks: [
      ...columns.map(({ title, left }): Mark => text('axis', { x: left, y: 1.2 * size }, title, size)),
      ...steps.flatMap((step, index) => {
        const middle = top + (index + 0.5) * row;
        return [
          ...(index === 0 ? [] : [ruleAt(top + index * row, width)]),
          text('label', { x: 0.3 * size, y: middle + 0.35 * size }, step.title, size),
          ...columns.flatMap((column) => barMarks(column, step, middle, size)),
        ];
      }),
    ],
  };
}

function columnsOf({ currency, priced }: CostDrawingInput['cost']): readonly Column[] {
  const time: Column = { title: 'Time', of: ({ time_s }) => time_s, words: timeWords, filled: true };
  const price: Column = {
    title: 'Money',
    of: ({ cost }) => cost,
    words: (step) => costWords(step, currency),
    filled: false,
  };
  return priced ? [time, price] : [time];
}

function placed(
  columns: readonly Column[],
  steps: readonly CostStep[],
  width: number,
  size: number,
): PlacedColumn[] {
  const widest = (texts: readonly string[]): number =>
    Math.max(0, ...texts.map((words) => textWidth(words, size)));
  const gap = 0.9 * size;
  const names = widest(steps.map(({ title }) => title)) + 2 * gap;
  const behind = columns.map(({ words }) => widest(steps.map(words)));
  const figures = behind.reduce((sum, each) => sum + each, 0);
  const between = (3 * columns.length - 1) * gap;
  const length = Math.max(3 * size, (width - names - figures - between) / columns.length);
  let left = names;
  return columns.map((column, index) => {
    const at = left;
    left += length + gap + behind[index]! + 2 * gap;
    return {
      ...column,
      left: at,
      length,
      most: Math.max(0, ...steps.map((step) => column.of(step).p90)),
    };
  });
}

function timeWords({ time_s, time_share }: CostStep): string {
  return `${workTime(time_s.mean)} · ${sharePercent(time_share)}`;
}

function costWords({ cost, cost_share }: CostStep, currency: string): string {
  return `${money(cost.mean, currency)} · ${sharePercent(cost_share)}`;
}

function barMarks(
  { left, length, most, filled, of, words }: PlacedColumn,
  step: CostStep,
  middle: number,
  size: number,
): Mark[] {
  const value = of(step);
  const at = (amount: number): number => left + (most === 0 ? 0 : (amount / most) * length);
  const half = 0.55 * size;
  const end = at(value.p50);
  const whisker = at(Math.max(value.p90, value.p50));
  const corners: DrawingPoint[] = [
    { x: left, y: middle - half },
    { x: end, y: middle - half },
    { x: end, y: middle + half },
    { x: left, y: middle + half },
  ];
  const bar: Mark[] =
    end - left < 0.05
      ? []
      : filled
        ? [{ kind: 'area', role: 'pass', points: corners }]
        : [
            ...hatch(corners, 0.45 * size, 'floor-hatch'),
            { kind: 'polyline', role: 'scale', points: [...corners, corners[0]!] },
          ];
  const line = (from: DrawingPoint, to: DrawingPoint): Mark => ({ kind: 'line', role: 'scale', from, to });
  const whiskers =
    whisker - end < 0.05
      ? []
      : [
          line({ x: end, y: middle }, { x: whisker, y: middle }),
          line({ x: whisker, y: middle - 0.3 * size }, { x: whisker, y: middle + 0.3 * size }),
        ];
  return [
    ...bar,
    ...whiskers,
    line({ x: left, y: middle - 0.8 * size }, { x: left, y: middle + 0.8 * size }),
    text('label', { x: Math.max(whisker, end) + 0.5 * size, y: middle + 0.35 * size }, words(step), size),
  ];
}

function ruleAt(y: number, width: number): Mark {
  return { kind: 'line', role: 'lane', from: { x: 0, y }, to: { x: width, y } };
}

function text(role: MarkRole, at: DrawingPoint, words: string, size: number): Mark {
  return { kind: 'text', role, at, text: words, anchor: 'start', size };
}
