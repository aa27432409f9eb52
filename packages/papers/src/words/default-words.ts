import {
  type DefaultUsed,
  type DocumentField,
  exactAmount,
  formatAmount,
  parseAmount,
  type UnitSystem,
} from '@furrow/engine';

/** The field of a path, an entry of a list like every other; undefined where there is none. */
export function fieldOf(path: string, fields: readonly DocumentField[]): DocumentField | undefined {
  const pattern = path.replace(/\[\d+\]/gu, '.*');
  return fields.find((field) => field.path === pattern);
}

/** Plain numbers whose unit ends the key: its name in titles, and what a reader in inches has for it. */
const RATES = [
  { key: '_min_per_m', metric: 'min per m', inch: 'min per ft', times: 0.3048 },
  { key: '_cm3_per_min', metric: 'cm3 per min', inch: 'in3 per min', times: 1 / 16.387064 },
  { key: '_kJ_per_mm', metric: 'kJ/mm', inch: 'kJ/in', times: 25.4 },
] as const;

/** The field's title, with the unit of a rate as the reader has it. */
export function defaultTitle(path: string, fields: readonly DocumentField[], units: UnitSystem): string {
  const title = fieldOf(path, fields)?.title ?? path;
  const rate = RATES.find(({ key }) => path.endsWith(key));
  return rate === undefined || units === 'metric' ? title : title.replace(rate.metric, rate.inch);
}

/** What stood in for a field, an amount or a rate in the reader's units. */
export function defaultText(
  { path, value }: Pick<DefaultUsed, 'path' | 'value'>,
  fields: readonly DocumentField[],
  units: UnitSystem,
): string {
  const rate = RATES.find(({ key }) => path.endsWith(key));
  if (rate !== undefined && units === 'inch')
    return String(Number((Number(value) * rate.times).toPrecision(2)));
  const kind = fieldOf(path, fields)?.kind;
  const amount = kind === undefined ? undefined : parseAmount(String(value), kind);
  if (kind === undefined || amount?.ok !== true) return String(value).replaceAll('_', ' ');
  return amount.value === 0 ? exactAmount(0, kind, units) : formatAmount(amount.value, kind, units);
}
