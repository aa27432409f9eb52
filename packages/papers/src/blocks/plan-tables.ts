import { formatAmount, formatStated, type GaugeStop, type Plan, type UnitSystem } from '@furrow/engine';
import { chanceWords, pricedText, wayWords } from '../words/index.ts';
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
export function stationTable({ after_layer, stations, stations_choice }: GaugeStop): TableBlock {
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
      choice.stations === stations ? `${choice.stations}, planned` : String(choice.stations),
      chanceWords(choice.depth_reached),
      chanceWords(choice.not_too_deep),
    ]),
    marks: stations_choice.flatMap((choice, row) =>
      choice.stations === stations ? [{ row, mark: 'chosen' } as const] : [],
    ),
  };
}

/** Plans to choose from, side by side; the `whole` form for a wide page, the `narrow` one for a terminal. */
export function choiceTable(
  plans: readonly Plan[],
  units: UnitSystem,
  form: 'whole' | 'narrow' = 'narrow',
): TableBlock {
  return form === 'whole' ? wholeChoices(plans, units) : narrowChoices(plans, units);
}

function narrowChoices(plans: readonly Plan[], units: UnitSystem): TableBlock {
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

/** The first of the plans is the one in use. What no plan has a price for has no column. */
function wholeChoices(plans: readonly Plan[], units: UnitSystem): TableBlock {
  const priced = plans.some((plan) => plan.cost.p50 > 0 || plan.whole_cost.p50 > 0);
  const time = (seconds: number): string => formatAmount(seconds, 'time', units);
  return {
    kind: 'table',
    caption: 'Candidate plans',
    columns: [
      { title: 'Set-up', align: 'start', weight: 2.4, strong: true },
      { title: 'Passes', align: 'end', weight: 0.6 },
      { title: 'Job time', align: 'end', weight: 1.6 },
      ...(priced
        ? ([
            { title: 'Arc cost', align: 'end', weight: 1 },
            { title: 'Whole job', align: 'end', weight: 1.4 },
          ] as const)
        : []),
      { title: 'Electrodes', align: 'end', weight: 0.7 },
      { title: 'Reached', align: 'end', weight: 1 },
      { title: 'Not too deep', align: 'end', weight: 1 },
      { title: 'Arc energy', align: 'end', weight: 1 },
    ],
    rows: plans.map((plan) => [
      setupText(plan, units),
      String(plan.passes.length),
      `${time(plan.job_time_s.p50)} to ${time(plan.job_time_s.p90)}, mean ${time(plan.job_time_s.mean)}`,
      ...(priced
        ? [
            pricedText(plan.cost.p50, plan.currency),
            `${pricedText(plan.whole_cost.p50, plan.currency)}${plan.whole_cost.mean === 0 ? '' : `, mean ${pricedText(plan.whole_cost.mean, plan.currency)}`}`,
          ]
        : []),
      String(Math.ceil(plan.electrodes_used.p50)),
      chanceWords(plan.assurance.depth_reached),
      chanceWords(plan.assurance.not_too_deep),
      formatStated(plan.arc_energy_kJ, 'kJ', units),
    ]),
    marks: [{ row: 0, mark: 'chosen' }],
  };
}

/** A plan in one line: 1/2 in jointed, 950 A, 1 track, 2 layers; gauge between layers. */
export function setupText(plan: Plan, units: UnitSystem): string {
  const currents = [...new Set(plan.passes.map((pass) => formatStated(pass.current_A, 'A', units)))];
  const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
  return (
    `${formatStated(plan.electrode_diameter_mm, 'mm', units, 'length')} ${plan.electrode_kind}, ${currents.join(', ')}, ` +
    `${counted(plan.tracks, 'track')}, ${counted(plan.layers, 'layer')}; ${wayWords(plan)}` +
    `${plan.dominated ? `, beaten in time${plan.whole_cost.p50 > 0 ? ', cost' : ''} and heat` : ''}`
  );
}
