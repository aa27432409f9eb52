import {
  type CostReport,
  FOOT,
  formatAmount,
  formatStated,
  type HeatReport,
  type UnitSystem,
} from '@furrow/engine';

/** From here on a time is told to the minute [s]. */
const TO_THE_MINUTE = 600;

/** What no estimate of this program holds. */
export const NEVER_IN_COST = [
  'profit, taxes, insurance, and what a customer’s terms ask for',
  'transport, access, scaffolding, lifting, and waiting for any of them',
  'preheating equipment and its fuel, and heat treatment after welding',
  'more work where a defect is larger than planned, or the metal is not what the job says',
];

/** A time of work: 14 h 36 min, 49 min, 5 min 12 s. */
export function workTime(seconds: number): string {
  const told = Math.abs(seconds) < TO_THE_MINUTE ? seconds : Math.round(seconds / 60) * 60;
  return formatAmount(told, 'time', 'metric');
}

/** Steps in which a customer is told a time of work, by the time from which they hold [s]. */
const TOLD_STEPS = [
  { from: 8 * 3600, step: 3600, unit: 'h', size: 3600 },
  { from: 2 * 3600, step: 1800, unit: 'h', size: 3600 },
  { from: 0, step: 300, unit: 'min', size: 60 },
] as const;

/** A range of working time in no finer steps than an estimate has: 16 to 19 h, 2.5 to 3 h, 40 to 50 min. */
export function workTimeRange(low: number, high: number): string {
  const { step, unit, size } = TOLD_STEPS.find(({ from }) => high >= from) ?? TOLD_STEPS[2];
  const [least, most] = [Math.floor(low / step) * step, Math.ceil(high / step) * step];
  return `${least / size} to ${most / size} ${unit}`;
}

/** Money with its currency, in no more figures than an estimate has. */
export function money(amount: number, currency: string): string {
  return `${threeFigures(amount)} ${currency}`;
}

/** Money as `money` writes it, or that there is none because no price is stated. */
export function pricedText(amount: number, currency: string): string {
  return amount === 0 ? 'no price' : money(amount, currency);
}

/** Two amounts of money with one currency: 1110 to 1310 EUR. */
export function moneyRange(from: number, to: number, currency: string): string {
  return `${threeFigures(from)} to ${money(to, currency)}`;
}

/** Length of seam that money is told by. */
export function byLength(units: UnitSystem): string {
  return units === 'inch' ? 'By the foot' : 'By the metre';
}

/** Money by the metre as money by that length. */
export function perLength(perMetre: number, units: UnitSystem): number {
  return units === 'inch' ? perMetre * FOOT : perMetre;
}

/** What grinding the skin off does to section and weld metal, in one sentence. */
export function skinText({ skin }: Pick<HeatReport, 'skin'>, units: UnitSystem): string {
  return (
    `The section grows from ${formatStated(skin.gouged_area_mm2, 'mm2', units)} to ${formatStated(skin.ground_area_mm2, 'mm2', units)}, ` +
    `${skin.added_percent.toFixed(0)} % more to fill: ${formatStated(skin.refill_kg, 'kg', units)} of weld metal for the whole seam, ` +
    `${formatStated(skin.added_kg, 'kg', units)} of it for the grinding.`
  );
}

/** From which length on the planned way is the cheaper one, in words. */
export function cheaperFrom(
  { way, cost, planned_cheaper_from_m }: CostReport['ways'][number],
  units: UnitSystem,
): string {
  if (way === 'planned' || cost === null) return '–';
  if (planned_cheaper_from_m === null) return 'at no length';
  return planned_cheaper_from_m === 0
    ? 'at any length'
    : `from ${formatAmount(planned_cheaper_from_m, 'length', units)}`;
}

/** What must be stated before money can be told; nothing where it is. */
export function unpricedText({ priced }: Pick<CostReport, 'priced'>): string | undefined {
  return priced
    ? undefined
    : 'No labour rate is stated, so there is time here and no money: state it, and the prices of electrodes, power, air and filler.';
}

/** A share in per cent; what is little but not nothing says so. */
export function sharePercent(share: number): string {
  const percent = share * 100;
  if (percent === 0) return '0 %';
  return percent < 0.5 ? '< 1 %' : `${percent.toFixed(0)} %`;
}

/** A difference with its sign, written by what writes an amount; nothing to tell is `none`. */
export function difference(value: number, written: (size: number) => string): string {
  const text = written(Math.abs(value));
  if (!/[1-9]/u.test(text)) return 'none';
  return `${value < 0 ? '−' : '+'}${text}`;
}

function threeFigures(value: number): string {
  const size = Math.abs(value);
  const text =
    size >= 99.95 || size === 0
      ? Number(value.toPrecision(3)).toFixed(0)
      : value.toFixed(size >= 9.995 ? 1 : 2);
  return text.replace('-', '−');
}
