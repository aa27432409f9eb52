import {
  type DefaultUsed,
  type DocumentField,
  exactAmount,
  formatAmount,
  parseAmount,
  rateOf,
  type UnitSystem,
} from '@furrow/engine';

/** The field of a path, an entry of a list like every other; undefined where there is none. */
export function fieldOf(path: string, fields: readonly DocumentField[]): DocumentField | undefined {
  const pattern = path.replace(/\[\d+\]/gu, '.*');
  return fields.find((field) => field.path === pattern);
}

/** The field's title, with the unit of a rate as the reader has it. */
export function defaultTitle(path: string, fields: readonly DocumentField[], units: UnitSystem): string {
  const title = fieldOf(path, fields)?.title ?? path;
  const rate = rateOf(path, units);
  return rate === undefined ? title : title.replace(rate.stated, rate.unit);
}

/** Names of fields that hold a price. */
const PRICE = /(?:^|[._])(?:price_\w+|\w+_per_(?:kWh|hour|kg|arc_hour|day))$/u;

/** Whether a field of a job is a price: none that is stated is no price, not one of nothing. */
export function isPrice(path: string): boolean {
  return PRICE.test(path);
}

/** What stood in for a field, an amount or a rate in the reader's units. */
export function defaultText(
  { path, value }: Pick<DefaultUsed, 'path' | 'value'>,
  fields: readonly DocumentField[],
  units: UnitSystem,
): string {
  if (Number(value) === 0 && isPrice(path)) return 'no price';
  const rate = rateOf(path, units);
  if (rate !== undefined && units === 'inch') return String(Number(rate.of(Number(value)).toPrecision(2)));
  const kind = fieldOf(path, fields)?.kind;
  const amount = kind === undefined ? undefined : parseAmount(String(value), kind);
  if (kind === undefined || amount?.ok !== true) return String(value).replaceAll('_', ' ');
  return amount.value === 0 ? exactAmount(0, kind, units) : formatAmount(amount.value, kind, units);
}
