import { formatStated, type Plan, type PlanPass, type UnitSystem } from '@furrow/engine';
import { fineStated, fineUnit } from '../words/index.ts';
import type { TableBlock, TableColumn } from './paper-document.ts';
import { numberRange, type PassGroup, passGroups } from './pass-groups.ts';

/** The passes of a plan as a table; passes with the same setting share a row. */
export function passTable(plan: Plan, units: UnitSystem): TableBlock {
  const unit = fineUnit(units);
  const currents = new Set(plan.passes.map((pass) => Math.round(pass.current_A)));
  const columns: TableColumn[] = [
    { title: 'Pass', align: 'start', weight: 0.8, strong: true },
    { title: 'Layer', align: 'end', weight: 0.8 },
    { title: `Offset, ${unit}`, align: 'end', weight: 1.6 },
    ...(currents.size > 1 ? [{ title: 'Current, A', align: 'end', weight: 1.1 } as const] : []),
    { title: `Travel, ${speedUnit(units)}`, align: 'end', weight: 1.7, strong: true },
    { title: 'Dwell, s', align: 'end', weight: 0.9 },
    { title: `Takes off, ${unit}`, align: 'end', weight: 1.7 },
  ];
  const setting = (pass: PlanPass): string[] => [
    ...(currents.size > 1 ? [String(Math.round(pass.current_A))] : []),
    pass.set_by_gauge ? 'by gauge' : bare(formatStated(pass.travel_mm_per_min, 'mm/min', units)),
    bare(formatStated(pass.dwell_s, 's', units)),
    bandText(pass.depth_mm, units),
  ];
  const rows = passGroups(plan.passes, setting).map((group) => [
    numberRange(group.passes.map((pass) => pass.number)),
    String(group.layer),
    offsetText(group, units),
    ...setting(group.passes[0]!),
  ]);
  return { kind: 'table', caption: 'Passes in the order of the work', columns, rows };
}

/** A band as median and ends: `7.0 (5.6–8.4)`. */
export function bandText(band: { p05: number; p50: number; p95: number }, units: UnitSystem): string {
  const [low, middle, high] = [band.p05, band.p50, band.p95].map((value) => fineStated(value, units));
  return `${middle} (${low}–${high})`;
}

/** Unit of travel in this system. */
function speedUnit(units: UnitSystem): string {
  return units === 'inch' ? 'in/min' : 'mm/min';
}

/** An amount without its unit, which stands at the head of the column. */
function bare(amount: string): string {
  return amount.slice(0, amount.lastIndexOf(' '));
}

function offsetText({ passes }: PassGroup, units: UnitSystem): string {
  const offsets = passes.map((pass) => signed(fineStated(pass.offset_mm, units)));
  const first = offsets[0] ?? '';
  const last = offsets.at(-1) ?? '';
  return offsets.length === 1 || first === last ? first : `${first} to ${last}`;
}

function signed(number: string): string {
  return Number(number.replace('−', '-')) > 0 ? `+${number}` : number;
}
