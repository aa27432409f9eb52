import { type JobField, parseAmount } from '@furrow/engine';

/** The unit that a key such as `thickness_mm` carries for its field; undefined if it is another key. */
export function keyedUnit(key: string, field: JobField): string | undefined {
  const name = field.path.split('.').at(-1) ?? '';
  if (field.kind === undefined || !key.startsWith(`${name}_`)) return undefined;
  const suffix = key.slice(name.length + 1);
  const unit = suffix === 'percent' ? '%' : suffix.replace('_per_', '/');
  return parseAmount(`1 ${unit}`, field.kind).ok ? unit : undefined;
}
