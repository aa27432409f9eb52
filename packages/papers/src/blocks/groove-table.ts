import { formatAmount, type Job, type UnitSystem } from '@furrow/engine';
import { chanceWords, drawnLength, drawnNumber, drawnTolerance, fineUnit } from '../words/index.ts';
import { labelTable } from './label-table.ts';
import type { TableBlock } from './paper-document.ts';

/** What the job asks of the groove, row by row. */
export function grooveTable({ groove }: Job, units: UnitSystem): TableBlock {
  const { wanted, plus, minus } = groove.depth;
  const unit = fineUnit(units);
  const rows: (readonly [string, string])[] = [
    ['Depth', `${drawnLength(wanted, units)}, ${drawnTolerance(plus, minus, units)} ${unit}`],
    [
      'Width at the surface',
      `${drawnNumber(groove.width.least, units)} to ${drawnLength(groove.width.most, units)}`,
    ],
    ...(groove.floor_width > 0
      ? [['Depth reached over a width of', drawnLength(groove.floor_width, units)] as const]
      : []),
    ...(groove.root_radius_least > 0
      ? [['Root radius', `at least ${drawnLength(groove.root_radius_least, units)}`] as const]
      : []),
    ['Plate left under it', `at least ${drawnLength(groove.ligament_least, units)}`],
    ['Chance asked for, depth', chanceWords(groove.assurance)],
    ['Chance asked for, plate left', chanceWords(groove.ligament_assurance)],
  ];
  return labelTable('Groove asked for', rows);
}

/** The plate and its seam, row by row. */
export function plateTable({ plate, seam }: Job, units: UnitSystem): TableBlock {
  const length = (value: number): string => formatAmount(value, 'length', units);
  const composition = Object.entries(plate.composition ?? {})
    .filter((entry): entry is [string, number] => typeof entry[1] === 'number')
    .map(([symbol, percent]) => `${symbol} ${percent}`);
  return labelTable('Material and seam', [
    ['Metal', plate.material.replaceAll('_', ' ')],
    ['Composition, mass %', composition.length === 0 ? 'not stated' : composition.join(', ')],
    ['Thickness', length(plate.thickness)],
    [
      'Seam',
      seam.path === 'girth' && seam.diameter !== undefined
        ? `girth of a ${length(seam.diameter)} shell, ${length(seam.length)}`
        : `straight, ${length(seam.length)}`,
    ],
    ['Position', seam.position.replaceAll('_', ' ')],
  ]);
}
