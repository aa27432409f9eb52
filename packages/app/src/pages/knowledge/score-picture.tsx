import { formatStated, formatStatedBand, inUnit, type KnowledgeReport, siOfShown } from '@furrow/engine';
import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';

type Scored = KnowledgeReport['scores']['entries'][number];

const WIDTH = 640;
const HEIGHT = 260;
const LEFT = 56;
const RIGHT = 8;
const TOP = 10;
const BOTTOM = 34;
/** The latest entries that are drawn: more would stand too close. */
const DRAWN = 30;

/** Each prediction as its band with the reading on it, in the order of the days. */
export function ScorePicture({ entries }: { readonly entries: readonly Scored[] }): VNode {
  const units = useUnits();
  const drawn = entries.slice(-DRAWN);
  const most =
    1.05 * Math.max(...drawn.map(({ predicted_mm, measured_mm }) => Math.max(predicted_mm.p95, measured_mm)));
  const step = stepOf(most, units);
  const x = (index: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * (index + 0.5)) / drawn.length;
  const y = (depth: number): number => HEIGHT - BOTTOM - ((HEIGHT - TOP - BOTTOM) * depth) / most;
  const wide = Math.min(22, (0.7 * (WIDTH - LEFT - RIGHT)) / drawn.length);
  const marks = Array.from({ length: Math.floor(most / step) + 1 }, (_, k) => k * step);
  const told = drawn
    .map(
      ({ entry, predicted_mm: { p05, p95 }, measured_mm, inside }) =>
        `${entry}: ${formatStatedBand(p05, p95, 'mm', units)}, read ${depth(measured_mm, units)}${inside ? '' : ', outside'}`,
    )
    .join('; ');
  return (
    <svg
      class="score-picture"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Predicted band and reading of each entry. ${told}.`}
    >
      {marks.map((mark) => (
        <g key={mark}>
          <path class="score-line" d={`M${LEFT} ${y(mark)}H${WIDTH - RIGHT}`} />
          <text class="score-text" x={LEFT - 6} y={y(mark) + 4} text-anchor="end">
            {depth(mark, units)}
          </text>
        </g>
      ))}
      {drawn.map(({ entry, predicted_mm: { p05, p50, p95 }, measured_mm, inside }, index) => (
        <g key={entry}>
          <rect
            class="score-band"
            x={x(index) - wide / 2}
            y={y(p95)}
            width={wide}
            height={Math.max(1, y(p05) - y(p95))}
          />
          <path class="score-median" d={`M${x(index) - wide / 2} ${y(p50)}h${wide}`} />
          {inside ? (
            <circle class="score-read" cx={x(index)} cy={y(measured_mm)} r={4} />
          ) : (
            <path class="score-outside" d={`M${x(index) - 5} ${y(measured_mm) - 5}l10 10m-10 0l10 -10`} />
          )}
          {drawn.length > 16 && index % 2 === 1 ? null : (
            <text class="score-text" x={x(index)} y={HEIGHT - 14} text-anchor="middle">
              {entry.slice(0, 7)}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

function depth(mm: number, units: 'metric' | 'inch'): string {
  return formatStated(mm, 'mm', units);
}

/** Round depths in the unit of the reader [mm or in]. */
const STEPS = { metric: [1, 2, 5, 10, 20, 50], inch: [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2] } as const;

/** Distance between lines: four or so of them, at round depths of the reader's units [mm]. */
function stepOf(most: number, units: 'metric' | 'inch'): number {
  const steps = STEPS[units].map((step) => inUnit(siOfShown(step, 'depth', units), 'mm'));
  return steps.find((step) => most / step <= 5) ?? steps.at(-1)!;
}
