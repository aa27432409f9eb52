import { INCH, MM, type UnitSystem } from '@furrow/engine';
import type { DrawingPoint, Mark } from './drawing.ts';
import { niceStep } from './nice-step.ts';

/** A bar of a round length to the scale of the drawing [drawing units per metre], its right end given. */
export function scaleBar(scale: number, units: UnitSystem, right: DrawingPoint, size: number): Mark[] {
  const unit = units === 'inch' ? INCH : MM;
  let amount = niceStep((3 * size) / scale / unit);
  if (amount * unit * scale > 8.5 * size) amount = niceStep(amount / 2.1);
  const length = amount * unit * scale;
  const text = `${Number(amount.toPrecision(3))} ${units === 'inch' ? 'in' : 'mm'}`;
  const start = { x: right.x - length, y: right.y };
  const tick = (x: number): Mark => ({
    kind: 'tick',
    role: 'scale',
    from: { x, y: right.y - 0.35 * size },
    to: { x, y: right.y + 0.35 * size },
  });
  return [
    { kind: 'line', role: 'scale', from: start, to: right },
    tick(start.x),
    tick(right.x),
    {
      kind: 'text',
      role: 'label',
      at: { x: start.x - 0.5 * size, y: right.y + 0.34 * size },
      text,
      anchor: 'end',
      size,
    },
  ];
}
