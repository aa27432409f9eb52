import type { AirReport, Answer, ElectricReport, PlaceReport, UnitSystem } from '@furrow/engine';
import { formatAmount, formatStated, sentenceText } from '@furrow/engine';
import {
  airTable,
  checkBlocks,
  connectionTable,
  leadTable,
  limitTable,
  lossTable,
  type PaperBlock,
  pickTable,
  remedyList,
  routeTable,
  senseList,
  sourceTable,
} from '../blocks/index.ts';
import { blocksToText } from './block-to-text.ts';
import { GOVERNED, heading, paragraph } from './told.ts';

/** Writes for the terminal what the kit makes of the plan; empty where no kit was given. */
export function renderSupplyText({ supply, refusal }: Answer, title: string, units: UnitSystem): string {
  if (supply === undefined) return '';
  return blocksToText([
    {
      kind: 'heading',
      level: 1,
      text: title,
      below: [`Kit: ${supply.kit.title}, revision ${supply.kit.revision.slice(0, 12)}`],
    },
    paragraph(sentenceText(supply.time.says, units)),
    ...(refusal === undefined ? [] : [paragraph(`NO PLAN: ${sentenceText(refusal.summary, units)}`)]),
    ...(supply.limits.length === 0
      ? []
      : [limitTable('Margins', supply.limits, units), remedyList(supply.limits, units)]),
    ...(supply.electric === null ? [] : electricBlocks(supply.electric, units)),
    ...(supply.air === null ? [] : airBlocks(supply.air, units)),
    ...(supply.place === null ? [] : placeBlocks(supply.place, units)),
    ...(supply.connections.length === 0 ? [] : [connectionTable(supply.connections, units)]),
    ...(supply.checks.length === 0
      ? []
      : [heading('Checks before the first arc'), ...checkBlocks(supply.checks, units)]),
    {
      kind: 'list',
      tone: 'caution',
      items: [...supply.issues.map(({ message }) => message), ...supply.cautions],
    },
    paragraph(GOVERNED),
  ]);
}

function electricBlocks(electric: ElectricReport, units: UnitSystem): PaperBlock[] {
  if (electric.kind === 'no_operating_point') return [paragraph(`No working point: ${electric.reason}.`)];
  const volts = (value: number): string => formatAmount(value, 'voltage', units);
  const input =
    electric.input_kVA === null ? '' : `; ${formatStated(electric.input_kVA, 'kVA', units)} from the mains`;
  return [
    heading('Electric loop'),
    paragraph(
      `${formatAmount(electric.current_A, 'current', units)} at ${volts(electric.arc_voltage_V)}; ` +
        `${volts(electric.needed_V)} needed at the source, ${volts(electric.available_V)} there; ` +
        `${formatStated(electric.arc_kW, 'kW', units)} in the arc of ${formatStated(electric.output_kW, 'kW', units)} at the terminals, ` +
        `${formatStated(electric.loss_W, 'W', units)} lost${input}.`,
    ),
    sourceTable(electric, units),
    leadTable(electric, units),
    lossTable(electric, units),
    senseList(electric),
  ];
}

function airBlocks(air: AirReport, units: UnitSystem): PaperBlock[] {
  const { drawdown } = air;
  const flow = formatStated(air.torch_flow_L_per_min, 'L/min', units);
  const lowest = formatStated(drawdown.lowest_kPa, 'kPa', units);
  const holds =
    drawdown.below_from_s === null
      ? `The pressure holds through ${drawdown.passes.length === 1 ? 'the pass' : `all ${drawdown.passes.length} passes`}.`
      : `From ${formatAmount(drawdown.below_from_s, 'time', units)} on, in pass ${drawdown.below_from_pass}, the pressure is too low.`;
  return [
    airTable(air, units),
    paragraph(`The torch takes ${flow}; the receiver falls to ${lowest}. ${holds}`),
    ...(air.hose_changes === null ? [] : [paragraph(sentenceText(air.hose_changes.says, units))]),
  ];
}

function placeBlocks(place: PlaceReport, units: UnitSystem): PaperBlock[] {
  const { station } = place;
  const length = (metres: number): string => formatAmount(metres, 'length', units);
  const at =
    station === null ? '' : `Control station at ${length(station.at_m.x_m)}, ${length(station.at_m.y_m)}. `;
  return [
    heading('Place'),
    paragraph(`${at}${sentenceText(place.says, units)}`),
    ...(place.routes.length === 0 ? [] : [routeTable(place, units)]),
    ...(place.picks.length === 0 ? [] : [pickTable('From stock', place.picks, units)]),
  ];
}
