import {
  type AirReport,
  formatAmount,
  formatStated,
  type PlaceReport,
  type SupplyReport,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import { conductorWords } from '../words/index.ts';
import type { Figure } from './figure.ts';
import type { ListBlock, PaperBlock, TableBlock } from './paper-document.ts';

/** What is set and expected at power source and air, for the plan's heaviest pass. */
export function supplyBlocks(supply: SupplyReport, units: UnitSystem): PaperBlock[] {
  const { electric, air, setting } = supply;
  if (setting === null) return [];
  const pressure = (kPa: number): string => formatStated(kPa, 'kPa', units);
  const volts = (value: number): string => formatAmount(value, 'voltage', units);
  const figures: Figure[] = [];
  if (supply.polarity !== null) {
    figures.push({
      label: 'Polarity',
      value: supply.polarity.electrode === 'electrode_positive' ? 'electrode +' : 'electrode −',
    });
  }
  if (electric?.kind === 'operating_point') {
    figures.push(
      {
        label: 'At the source',
        value: volts(electric.needed_V),
        note: `${volts(electric.available_V)} available`,
      },
      { label: 'Arc in ten minutes', value: `${electric.arc_minutes_in_ten.toFixed(1)} min` },
    );
  }
  if (air !== null) {
    figures.push(
      { label: 'Regulator, flowing', value: pressure(air.regulator_kPa) },
      { label: 'Torch, flowing', value: pressure(air.torch_kPa) },
      {
        label: 'Air through the torch',
        value: formatStated(air.torch_flow_L_per_min, 'L/min', units),
      },
    );
  }
  return [
    { kind: 'heading', level: 2, text: `Supply: ${supply.kit.title}` },
    { kind: 'paragraph', tone: 'plain', text: sentenceText(supply.time.says, units) },
    ...(figures.length === 0 ? [] : [{ kind: 'figures', size: 'plain', items: figures } as const]),
    ...(electric?.kind === 'operating_point'
      ? [sourceTable(electric, units), leadTable(electric, units)]
      : []),
    ...(supply.issues.length === 0
      ? []
      : [{ kind: 'list', tone: 'caution', items: supply.issues.map(({ message }) => message) } as const]),
  ];
}

type Point = Extract<NonNullable<SupplyReport['electric']>, { kind: 'operating_point' }>;

/** The power sources, each with what it gives. */
export function sourceTable({ sources }: Point, units: UnitSystem): TableBlock {
  const volts = (value: number): string => formatAmount(value, 'voltage', units);
  const lined = sources.some(({ line_current_A: line }) => (line ?? null) !== null);
  return {
    kind: 'table',
    caption: 'Power sources at the setting',
    small: true,
    columns: [
      { title: 'Source', align: 'start', weight: 2, strong: true },
      { title: 'Current', align: 'end', weight: 1 },
      { title: 'Share', align: 'end', weight: 0.7 },
      { title: 'Terminals', align: 'end', weight: 1 },
      { title: 'No load', align: 'end', weight: 1 },
      { title: 'May run in ten minutes', align: 'end', weight: 1.4 },
      ...(lined ? [{ title: 'Mains line', align: 'end' as const, weight: 1 }] : []),
    ],
    rows: sources.map((source) => [
      source.drops_out ? `${source.name}, drops out` : source.name,
      formatAmount(source.current_A, 'current', units),
      `${source.share_percent.toFixed(0)} %`,
      volts(source.terminal_voltage_V),
      volts(source.no_load_voltage_V),
      `${source.permissible_minutes.toFixed(1)} min`,
      ...(lined
        ? [source.line_current_A === null ? 'not stated' : formatStated(source.line_current_A, 'A', units)]
        : []),
    ]),
  };
}

/** The leads, each with what it loses and how hot it gets. */
export function leadTable({ leads }: Point, units: UnitSystem): TableBlock {
  const degrees = (celsius: number): string => formatStated(celsius, 'degC', units);
  return {
    kind: 'table',
    caption: 'Leads at the setting',
    small: true,
    columns: [
      { title: 'Lead', align: 'start', weight: 2, strong: true },
      { title: 'Size', align: 'start', weight: 1.3 },
      { title: 'Length', align: 'end', weight: 1 },
      { title: 'Loses', align: 'end', weight: 1 },
      { title: 'Hottest', align: 'end', weight: 1 },
      { title: 'Stands', align: 'end', weight: 1 },
    ],
    rows: leads.map((lead) => [
      lead.name,
      `${lead.parallels} × ${conductorWords(lead.size, units)}`,
      formatAmount(lead.length_m, 'length', units),
      formatAmount(lead.drop_V, 'voltage', units),
      degrees(lead.temperature_C),
      degrees(lead.insulation_limit_C),
    ]),
  };
}

/** Pressures along the air path, still and with the torch open. */
export function airTable({ points }: AirReport, units: UnitSystem): TableBlock {
  const gauge = (kPa: number): string => formatStated(kPa, 'kPa', units);
  return {
    kind: 'table',
    caption: 'Air, flowing at the lowest of the receiver',
    columns: [
      { title: 'Behind', align: 'start', weight: 2 },
      { title: 'Static', align: 'end', weight: 1 },
      { title: 'Flowing', align: 'end', weight: 1 },
    ],
    rows: points.map((point) => [point.behind, gauge(point.static_kPa), gauge(point.flowing_kPa)]),
  };
}

/** Where the volts between source and arc go: copper and joints, with the heat that each makes. */
export function lossTable({ losses, loss_W, needed_V, arc_voltage_V }: Point, units: UnitSystem): TableBlock {
  const volts = (value: number): string => formatAmount(value, 'voltage', units);
  return {
    kind: 'table',
    caption: `Where the volts go, from ${volts(needed_V)} at the terminals to ${volts(arc_voltage_V)} in the arc`,
    small: true,
    columns: [
      { title: 'Lead', align: 'start', weight: 2, strong: true },
      { title: 'Part', align: 'start', weight: 2 },
      { title: 'Voltage', align: 'end', weight: 1 },
      { title: 'Heat', align: 'end', weight: 1 },
      { title: 'Share of the loss', align: 'end', weight: 1 },
    ],
    rows: losses.map((loss) => [
      loss.lead,
      loss.joint === null ? 'its copper' : `joint: ${loss.joint}`,
      volts(loss.drop_V),
      formatAmount(loss.loss_W, 'power', units),
      `${(loss_W > 0 ? (100 * loss.loss_W) / loss_W : 0).toFixed(0)} %`,
    ]),
  };
}

/** What a wrong landing of the sense wires does. */
export function senseList({ sense }: Point): ListBlock {
  return {
    kind: 'list',
    tone: 'plain',
    items: sense.map(({ landed, says }) => `Sense wires: ${landed}: ${says}`),
  };
}

/** The ways of leads and hoses in the bay: what each needs, slack in it, and the pieces it is made of. */
export function routeTable({ routes }: PlaceReport, units: UnitSystem): TableBlock {
  const length = (metres: number): string => formatAmount(metres, 'length', units);
  return {
    kind: 'table',
    caption: 'Ways of leads and hoses, slack in what is needed',
    small: true,
    columns: [
      { title: 'Way', align: 'start', weight: 1.4, strong: true },
      { title: 'What', align: 'start', weight: 0.8 },
      { title: 'Needed', align: 'end', weight: 1 },
      { title: 'Picked', align: 'end', weight: 1 },
      { title: 'Pieces', align: 'start', weight: 1.6 },
      { title: 'Joints', align: 'end', weight: 0.6 },
      { title: 'Cleats', align: 'end', weight: 0.6 },
      { title: 'Lost', align: 'end', weight: 0.8 },
    ],
    rows: routes.map((route) => [
      route.name,
      route.kind,
      length(route.needed_m),
      length(route.picked_m),
      route.pieces.join(' + '),
      String(route.joints),
      String(route.cleats),
      formatAmount(route.loss_W, 'power', units),
    ]),
  };
}

/** Pieces of stock: what is picked of it, or what is left. */
export function pickTable(caption: string, picks: PlaceReport['picks'], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption,
    columns: [
      { title: 'Name', align: 'start', weight: 1.5, strong: true },
      { title: 'Kind', align: 'start', weight: 0.8 },
      { title: 'Size', align: 'start', weight: 1 },
      { title: 'Length', align: 'end', weight: 1 },
      { title: 'How many', align: 'end', weight: 0.6 },
    ],
    rows: picks.map((pick) => [
      pick.name,
      pick.kind,
      conductorWords(pick.size, units),
      formatAmount(pick.length_m, 'length', units),
      String(pick.count),
    ]),
  };
}
