import type {
  AirReport,
  Answer,
  CommissionUnit,
  ElectricReport,
  PlaceReport,
  SupplyReport,
  UnitSystem,
} from '@furrow/engine';
import { formatAmount, fromUnit, READING_KINDS } from '@furrow/engine';
import { limitLines } from './limit-lines.ts';
import { plainLine } from './plain-line.ts';
import { type TextColumn, textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;

/** Writes for the terminal what the kit makes of the plan; empty where no kit was given. */
export function renderSupplyText({ supply, refusal }: Answer, title: string, units: UnitSystem): string {
  if (supply === undefined) return '';
  const lines = [
    ...wrapped(plainLine(title), WIDTH),
    ...wrapped(`Kit: ${plainLine(supply.kit.title)}, revision ${supply.kit.revision.slice(0, 12)}`, WIDTH),
    '',
    ...wrapped(plainLine(supply.time.says), WIDTH),
    ...(refusal === undefined ? [] : wrapped(`NO PLAN: ${plainLine(refusal.summary)}`, WIDTH)),
    '',
    ...limitLines(supply.limits, units, WIDTH),
    ...(supply.electric === null ? [] : electricLines(supply.electric, units)),
    ...(supply.air === null ? [] : airLines(supply.air, units)),
    ...(supply.place === null ? [] : placeLines(supply.place, units)),
    ...connectionLines(supply, units),
    ...checkLines(supply, units),
    ...[...supply.issues.map(({ message }) => message), ...supply.cautions].flatMap((text) =>
      wrapped(plainLine(text), WIDTH, '  ! '),
    ),
    ...wrapped('Local codes and licensed practice govern; the software never signs.', WIDTH),
  ];
  return `${lines.join('\n')}\n`;
}

const start = (title: string): TextColumn => ({ title, align: 'start' });
const end = (title: string): TextColumn => ({ title, align: 'end' });
const figure = (value: number, digits = 1): string => value.toFixed(digits);
const metres = (value: number, units: UnitSystem): string => formatAmount(value, 'length', units);
const gauge = (kPa: number, units: UnitSystem): string => formatAmount(kPa * 1000, 'pressure', units);
const degrees = (celsius: number, units: UnitSystem): string =>
  formatAmount(celsius + 273.15, 'temperature', units);

function electricLines(electric: ElectricReport, units: UnitSystem): string[] {
  if (electric.kind === 'no_operating_point')
    return [...wrapped(`No working point: ${electric.reason}.`, WIDTH), ''];
  const input = electric.input_kVA === null ? '' : `; ${figure(electric.input_kVA)} kVA from the mains`;
  return [
    'Electric loop',
    ...wrapped(
      `${figure(electric.current_A, 0)} A at ${figure(electric.arc_voltage_V)} V; ${figure(electric.needed_V)} V needed at the source, ` +
        `${figure(electric.available_V)} V there; ${figure(electric.loss_W / 1000, 2)} kW lost${input}.`,
      WIDTH,
      '  ',
    ),
    ...textTable(
      [start('Source'), end('Current'), end('Share'), end('Terminals'), end('Minutes in ten')],
      electric.sources.map((source) => [
        plainLine(source.name),
        `${figure(source.current_A, 0)} A`,
        `${figure(source.share_percent, 0)} %`,
        `${figure(source.terminal_voltage_V)} V`,
        figure(source.permissible_minutes),
      ]),
    ),
    ...textTable(
      [start('Lead'), start('Size'), end('Length'), end('Drop'), end('Hottest'), end('Limit')],
      electric.leads.map((lead) => [
        plainLine(lead.name),
        `${lead.parallels} × ${lead.size}`,
        metres(lead.length_m, units),
        `${figure(lead.drop_V, 2)} V`,
        degrees(lead.temperature_C, units),
        degrees(lead.insulation_limit_C, units),
      ]),
    ),
    ...electric.sense.flatMap(({ landed, error_V, depth_change_percent }) =>
      wrapped(
        `Sense wires: ${landed}: ${figure(error_V)} V wrong${depthWords(depth_change_percent)}.`,
        WIDTH,
        '  ',
      ),
    ),
    '',
  ];
}

/** What a wrong landing does to the depth; beyond the limits no figure is told. */
function depthWords(percent: number | null): string {
  if (percent === null) return ', beyond the limits of process or sources: do not run it so';
  return `, depth about ${percent < 0 ? '' : '+'}${figure(percent, 0)} %, and the electrode may touch down`;
}

function airLines(air: AirReport, units: UnitSystem): string[] {
  const { drawdown } = air;
  const flow = (litres: number): string => formatAmount(litres / 60_000, 'air_flow', units);
  const holds =
    drawdown.below_from_s === null
      ? `The pressure holds through ${drawdown.passes.length === 1 ? 'the pass' : `all ${drawdown.passes.length} passes`}.`
      : `From ${formatAmount(drawdown.below_from_s, 'time', units)} on, in pass ${drawdown.below_from_pass}, the pressure is too low.`;
  return [
    'Air, flowing at the lowest of the receiver',
    ...textTable(
      [start('Behind'), end('Static'), end('Flowing')],
      air.points.map((point) => [
        plainLine(point.behind),
        gauge(point.static_kPa, units),
        gauge(point.flowing_kPa, units),
      ]),
    ),
    ...wrapped(
      `The torch takes ${flow(air.torch_flow_L_per_min)}; the receiver falls to ${gauge(drawdown.lowest_kPa, units)}. ${holds}`,
      WIDTH,
      '  ',
    ),
    ...(air.hose_changes === null ? [] : wrapped(plainLine(air.hose_changes.says), WIDTH, '  ')),
    '',
  ];
}

function placeLines(place: PlaceReport, units: UnitSystem): string[] {
  const { station } = place;
  return [
    'Place',
    ...(station === null
      ? []
      : [`  Control station at ${metres(station.at_m.x_m, units)}, ${metres(station.at_m.y_m, units)}`]),
    ...wrapped(plainLine(place.says), WIDTH, '  '),
    ...(place.picks.length === 0
      ? []
      : textTable(
          [end('Pick'), start('Kind'), start('Size'), end('Length')],
          place.picks.map((pick) => [
            String(pick.count),
            plainLine(pick.name),
            pick.size,
            metres(pick.length_m, units),
          ]),
        )),
    '',
  ];
}

function connectionLines({ connections }: SupplyReport, units: UnitSystem): string[] {
  if (connections.length === 0) return [];
  return [
    'Connections',
    ...textTable(
      [end('No.'), start('What'), start('From'), start('To'), start('Size'), end('Length')],
      connections.map((row) => [
        String(row.number),
        plainLine(row.name),
        plainLine(row.from),
        plainLine(row.to),
        row.size ?? '',
        row.length_mm === null ? '' : metres(row.length_mm / 1000, units),
      ]),
    ),
    '',
  ];
}

function checkLines({ checks }: SupplyReport, units: UnitSystem): string[] {
  if (checks.length === 0) return [];
  // Millivolts and seconds are read on a scale in these very units, whatever the shop's.
  const shown = (unit: CommissionUnit, value: number): string =>
    unit === 'mV' || unit === 's'
      ? `${Number(value.toPrecision(3))} ${unit}`
      : formatAmount(fromUnit(value, unit), READING_KINDS[unit], units);
  return [
    'Checks before the first arc',
    ...textTable(
      [start('Check'), end('Expect'), end('From'), end('To')],
      checks.map((check) =>
        check.kind === 'confirm'
          ? [plainLine(check.title), 'tick', '', '']
          : [
              plainLine(check.title),
              shown(check.unit, check.expected),
              shown(check.unit, check.least),
              shown(check.unit, check.most),
            ],
      ),
    ),
    '',
  ];
}
