import { inUnit } from '../quantity/index.ts';
import { chancesOf } from './chance.ts';
import { depthDemand } from './demand.ts';
import { outlooks } from './gauge-table.ts';
import type { ReadingTable } from './reading-table.ts';
import type { ReportInput } from './report-input.ts';
import type { GaugeRow, GaugeStop } from './result.ts';
import { runPlan } from './run-plan.ts';
import { withStations } from './search-pattern.ts';
import { NOT_READ, tableQuestion } from './solve.ts';
import type { Feasible } from './weigh.ts';

/** Places of the stations: even, the outer ones half a gap from the ends, so that no end goes unseen. */
function stationPositions(length: number, stations: number): number[] {
  return Array.from({ length: stations }, (_, index) => inUnit((length * (index + 0.5)) / stations, 'mm'));
}

/** The stops to gauge at, with the tables for the card. */
export function gaugeStops(feasible: Feasible, input: ReportInput): GaugeStop[] {
  const { task, solved } = feasible;
  const { layers } = solved.setup;
  const choice = layers.some((rule) => rule.kind === 'table') ? stationsChoice(feasible, input) : [];
  return layers.flatMap((rule, layer): GaugeStop[] => {
    if (rule.kind !== 'table') return [];
    return [
      {
        after_layer: layer,
        stations: rule.stations,
        station_positions_mm: stationPositions(input.job.seam.length, rule.stations),
        reading_sd_mm: inUnit(task.run.readingSd, 'mm'),
        table: tableRows(feasible, layer, rule.table, rule.stations, input),
        stations_choice: choice,
      },
    ];
  });
}

/** How the shops fared whose reading fell into one row. */
interface RowCount {
  readings: number;
  reached: number;
  notTooDeep: number;
}

/** Readings in a row from which its shares are told as counted [-]; with fewer the law's forecast is told. */
const COUNTED_FROM = 200;

/** Counts, for every row of the table of a layer, how the groove came out in the end in the shops that read it. */
function countRows(feasible: Feasible, layer: number, rowsOfTable: number, input: ReportInput): RowCount[] {
  const { setup, outcomes, rows = [] } = feasible.solved;
  const { tracks } = setup.pattern;
  const demand = depthDemand(input.job, 0);
  const counts = Array.from({ length: rowsOfTable }, () => ({ readings: 0, reached: 0, notTooDeep: 0 }));
  for (let track = 0; track < tracks; track += 1) {
    const read = rows[layer * tracks + track]!;
    for (let shop = 0; shop < read.length; shop += 1) {
      if (read[shop] === NOT_READ) continue;
      const count = counts[read[shop]!]!;
      count.readings += 1;
      if (outcomes.shallowest[shop]! >= demand.least) count.reached += 1;
      if (outcomes.deepest[shop]! <= demand.most) count.notTooDeep += 1;
    }
  }
  return counts;
}

function tableRows(
  feasible: Feasible,
  layer: number,
  table: ReadingTable,
  stations: number,
  input: ReportInput,
): GaugeRow[] {
  const { task, solved } = feasible;
  const { setup } = solved;
  const outlookOf = outlooks(tableQuestion(task, setup.layers.slice(0, layer), stations));
  const counts = countRows(feasible, layer, table.readings.length, input);
  return table.readings.map((reading, row): GaugeRow => {
    const from = row === 0 ? 0 : table.edges[row - 1]!;
    const to = table.edges[row];
    const rowWidth = row === 0 || to === undefined ? 0 : to - from;
    const energy = table.logEnergy[row]!;
    const run = !Number.isNaN(energy);
    const outlook = outlookOf(reading, rowWidth);
    const forecast = run ? outlook.after(energy) : outlook.asItIs;
    const count = counts[row]!;
    const counted = count.readings >= COUNTED_FROM;
    const notTooDeep = counted ? count.notTooDeep / count.readings : forecast.notTooDeep;
    const quantile = (share: number): number =>
      inUnit(run ? outlook.depthQuantile(energy, share) : reading, 'mm');
    return {
      reading_from_mm: inUnit(from, 'mm'),
      reading_to_mm: to === undefined ? null : inUnit(to, 'mm'),
      action: run ? 'run' : forecast.notTooDeep < 0.5 ? 'ask' : 'done',
      travel_mm_per_min: run ? inUnit(setup.unitTravel * Math.exp(-energy), 'mm_per_min') : null,
      expected_depth_mm: { p05: quantile(0.05), p50: quantile(0.5), p95: quantile(0.95) },
      depth_reached: counted ? count.reached / count.readings : forecast.reached,
      not_too_deep: notTooDeep,
    };
  });
}

function stationsChoice(feasible: Feasible, input: ReportInput): GaugeStop['stations_choice'] {
  const { job } = input;
  const most = job.kit.gauge.stations_most;
  const counts = [1, 2, 3, 4, 5, 8, 12, 20, 50].filter((count) => count <= most);
  if (!counts.includes(most)) counts.push(most);
  const { layers } = feasible.solved.setup;
  return counts.map((stations) => {
    // The plan's own number of stations is counted already.
    if (layers.every((rule) => rule.kind === 'set' || rule.stations === stations)) {
      const { reached, notTooDeep } = feasible.solved.chances;
      return { stations, depth_reached: reached, not_too_deep: notTooDeep };
    }
    const setup = { ...feasible.solved.setup, layers: withStations(layers, stations) };
    const chances = chancesOf(runPlan(setup, feasible.task.run, input.draws), depthDemand(job, 0));
    return { stations, depth_reached: chances.reached, not_too_deep: chances.notTooDeep };
  });
}
