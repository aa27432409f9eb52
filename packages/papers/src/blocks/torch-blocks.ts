import {
  type Answer,
  formatAmount,
  fromUnit,
  type Plan,
  type ReadJob,
  turningOf,
  type UnitSystem,
  USUAL_STICK_OUT,
} from '@furrow/engine';
import { type Drawing, torchDrawing } from '../drawing/index.ts';
import { perMinute, turningWords } from '../words/index.ts';
import type { Figure } from './figure.ts';
import type { ParagraphBlock } from './paper-document.ts';

/** Electrode from jaws to tip that the rig is set to: as its kit states, else what is usual [m]. */
export function stickOutOf({ supply }: Answer): number {
  const check = supply?.checks.find(({ id }) => id === 'stick_out');
  return check?.kind === 'measure' ? fromUnit(check.expected, 'mm') : USUAL_STICK_OUT.value;
}

/** Diameter of a turning roll, where the kit states one [m]. */
function rollOf({ supply }: Answer): number | undefined {
  const roll = supply?.turning?.roll_diameter_mm ?? undefined;
  return roll === undefined ? undefined : fromUnit(roll, 'mm');
}

/** How a girth turns under the torch for its first pass; nothing for a straight seam. */
export function turningFigures(
  { job: { seam } }: ReadJob,
  answer: Answer,
  { passes }: Plan,
  units: UnitSystem,
): Figure[] {
  if (seam.path !== 'girth' || seam.diameter === undefined) return [];
  const { set_by_gauge, travel_mm_per_min } = passes[0]!;
  const travel = fromUnit(travel_mm_per_min, 'mm/min');
  const { shell, turn, roll } = turningOf(travel, seam.diameter, rollOf(answer));
  if (set_by_gauge) {
    // the revolutions of the middle row are no setting: they follow the travel that the reading asks for
    const rate = `${perMinute(shell)} rev/min at ${formatAmount(travel, 'speed', units)}`;
    const rolls = roll === undefined ? '' : `, rolls ${perMinute(roll)}`;
    return [{ label: 'Shell turns', value: 'by gauge', note: `${rate}${rolls}; in proportion` }];
  }
  return [
    {
      label: 'Shell turns',
      value: perMinute(shell),
      unit: 'rev/min',
      note: [
        `once in ${formatAmount(turn, 'time', units)}`,
        ...(roll === undefined ? [] : [`rolls ${perMinute(roll)}`]),
        'others by their travel',
      ].join(', '),
    },
  ];
}

/** The torch beside the seam as it is set for the first pass. */
export function torchDrawingOf(
  { job }: ReadJob,
  answer: Answer,
  plan: Plan,
  units: UnitSystem,
  box: { readonly width: number; readonly height: number },
): Drawing {
  return torchDrawing({ job, plan, stickOut: stickOutOf(answer), roll: rollOf(answer), units, ...box });
}

/** How a girth turns, in a sentence; nothing for a straight seam. */
export function turningBlocks(
  { job: { seam } }: ReadJob,
  answer: Answer,
  { passes }: Plan,
  units: UnitSystem,
): ParagraphBlock[] {
  if (seam.path !== 'girth' || seam.diameter === undefined) return [];
  const { set_by_gauge, travel_mm_per_min } = passes[0]!;
  const words = turningWords(fromUnit(travel_mm_per_min, 'mm/min'), seam.diameter, rollOf(answer), units);
  const text = set_by_gauge ? `The gauge sets the travel of the first pass. ${words}` : words;
  return [{ kind: 'paragraph', tone: 'plain', text }];
}
