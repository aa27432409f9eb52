import { formatAmount, type Job, type UnitSystem } from '@furrow/engine';

const SHAPES: Readonly<Record<Job['groove']['shape'], string>> = {
  u: 'U groove',
  wash: 'wash over a width',
  pocket: 'pocket with run-outs',
};

/** Seam, plate and groove in one line. */
export function jobWords({ seam, plate, groove }: Job, units: UnitSystem): string {
  const length = (value: number): string => formatAmount(value, 'length', units);
  const path =
    seam.path === 'girth' && seam.diameter !== undefined
      ? `girth of ${length(seam.diameter)} shell`
      : 'straight seam';
  return [
    `${path}, ${length(seam.length)}`,
    `${plate.material.replaceAll('_', ' ')}, ${length(plate.thickness)} thick`,
    `position ${seam.position.replaceAll('_', ' ')}`,
    SHAPES[groove.shape],
  ].join(' · ');
}
