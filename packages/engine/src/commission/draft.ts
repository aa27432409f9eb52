import { type FaultModel, faultsBehind } from '../faults/index.ts';
import { inUnit } from '../quantity/index.ts';
import type {
  CheckHints,
  CommissionCheck,
  CommissionCheckFacts,
  CommissionUnit,
  ConfirmCheck,
  MeasureCheck,
} from './check.ts';
import type { StatedFigure } from './instruments.ts';
import { READING_KINDS } from './units.ts';

/** One uncertainty of a reading to expect: a stated figure and how many SI units one of it is worth. */
export interface DraftPart {
  readonly what: string;
  readonly figure: StatedFigure;
  /** Multiplies the figure: the reading for a share, 1 for an amount [see figure]. */
  readonly times: number;
}

/** A check as the sections write it: amounts in SI, faults not yet looked up. */
export type CheckDraft = Omit<CommissionCheckFacts, 'hints'> & { readonly hints?: CheckHints } & (
    | {
        readonly kind: 'measure';
        readonly unit: CommissionUnit;
        /** [SI unit] */
        readonly expected: number;
        readonly parts: readonly DraftPart[];
        /** Ends of a span of good readings, where there is more than one; the uncertainties widen it [SI unit]. */
        readonly span?: { readonly least: number; readonly most: number };
        /** What the process needs at least: the band does not reach below it [SI unit]. */
        readonly floor?: number;
        /** What may be at most: the band does not reach above it [SI unit]. */
        readonly ceiling?: number;
      }
    | { readonly kind: 'confirm' }
  );

/** Independent half widths add up as the root of the sum of their squares. */
function halfWidth(parts: readonly { readonly half_width: number }[]): number {
  return Math.hypot(...parts.map(({ half_width }) => half_width));
}

/** The check with its band worked out and the faults behind a reading outside it. */
export function finishCheck(draft: CheckDraft, model: FaultModel): CommissionCheck {
  const { id, stage, title, ask, caution, why, evidence, hints = {} } = draft;
  const facts = { id, stage, title, ask, caution, why, evidence, hints };
  const behind = (outcome: 'yes' | 'low' | 'high') =>
    evidence === null ? [] : faultsBehind(model, evidence, outcome);
  if (draft.kind === 'confirm')
    return { ...facts, kind: 'confirm', unmet: behind('yes') } satisfies ConfirmCheck;
  const { unit } = draft;
  const told = (si: number): number => inUnit(si, unit);
  const zero = told(0);
  const parts = draft.parts.map(({ what, figure, times }) => ({
    what,
    half_width: told(Math.abs(figure.value * times)) - zero,
    source: figure.source,
  }));
  const expected = told(draft.expected);
  const half = halfWidth(parts);
  const least = told(draft.span?.least ?? draft.expected) - half;
  const most = told(draft.span?.most ?? draft.expected) + half;
  return {
    ...facts,
    kind: 'measure',
    quantity: READING_KINDS[unit],
    unit,
    expected,
    least: Math.max(least, draft.floor === undefined ? least : Math.min(expected, told(draft.floor))),
    most: Math.min(most, draft.ceiling === undefined ? most : Math.max(expected, told(draft.ceiling))),
    parts,
    below: behind('low'),
    above: behind('high'),
  } satisfies MeasureCheck;
}
