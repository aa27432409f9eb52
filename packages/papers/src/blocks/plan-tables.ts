import { formatAmount, formatStated, type GaugeStop, type Plan, type UnitSystem } from '@furrow/engine';
import { chanceWords, pricedText } from '../words/index.ts';
import type { ListBlock, TableBlock } from './paper-document.ts';

/** How surely a plan keeps each of its promises. */
export function sureList(assurance: Plan['assurance']): ListBlock {
  return {
    kind: 'list',
    tone: 'plain',
    items: [
      `depth reached everywhere: ${chanceWords(assurance.depth_reached)}`,
      `no point too deep: ${chanceWords(assurance.not_too_deep)}`,
      `ligament kept: ${chanceWords(assurance.ligament_kept)}`,
      `width in its band: ${chanceWords(assurance.width_in_band)}`,
    ],
  };
}

/** What more or fewer stations at a stop would buy. */
export function stationTable({ after_layer, stations_choice }: GaugeStop): TableBlock {
  return {
    kind: 'table',
    caption:
      after_layer === 0
        ? 'What stations on the first cut buy'
        : `What stations buy after layer ${after_layer}`,
    columns: [
      { title: 'Stations', align: 'end', weight: 1 },
      { title: 'Reached', align: 'end', weight: 1 },
      { title: 'Not too deep', align: 'end', weight: 1 },
    ],
    rows: stations_choice.map((choice) => [
      String(choice.stations),
      chanceWords(choice.depth_reached),
      chanceWords(choice.not_too_deep),
    ]),
  };
}

/** Plans to choose from, side by side. */
export function choiceTable(plans: readonly Plan[], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'Plans to choose from, quickest first (passes: layers×tracks; *: beaten in time, cost and heat)',
    columns: [
      { title: 'Electrode', align: 'start', weight: 1 },
      { title: 'Passes', align: 'start', weight: 1 },
      ...['Job time', 'Arc cost', 'Whole job', 'Energy', 'Floor', 'Reached', 'Not too deep'].map((title) => ({
        title,
        align: 'end' as const,
        weight: 1,
      })),
    ],
    rows: plans.map((plan) => [
      formatStated(plan.electrode_diameter_mm, 'mm', units, 'length'),
      `${plan.layers}×${plan.tracks}${plan.dominated ? ' *' : ''}`,
      formatAmount(plan.job_time_s.p50, 'time', units),
      pricedText(plan.cost.p50, plan.currency),
      pricedText(plan.whole_cost.p50, plan.currency),
      formatStated(plan.arc_energy_kJ, 'kJ', units),
      formatStated(plan.floor_depth_mm.p50, 'mm', units),
      chanceWords(plan.assurance.depth_reached),
      chanceWords(plan.assurance.not_too_deep),
    ]),
  };
}
