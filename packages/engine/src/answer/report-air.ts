import type { Outcome } from '../issue/index.ts';
import { airOfKit, hosesOfKit, type Kit } from '../kit/index.ts';
import { inUnit } from '../quantity/index.ts';
import type { AirPointReport, AirReport, DrawdownReport, HoseChangesReport } from '../result/index.ts';
import {
  type AirItem,
  type AirPoint,
  type AirSupply,
  type AirWish,
  airDrawdown,
  airPoint,
  type Drawdown,
  type DutyInterval,
  freeAirDelivered,
  leastHoseChanges,
} from '../supply/index.ts';
import { wantedPressures } from './kit-limits.ts';

/** Points of the receiver's course that are told at most [-]. */
const SAMPLES_MOST = 400;

/** The air of a kit through a duty whose passes are cut at this travel. */
export function reportAir(kit: Kit, duty: readonly DutyInterval[], travel: number): Outcome<AirReport> {
  const supply = airOfKit(kit);
  const wanted = wantedPressures(kit);
  const wish: AirWish = { pressure: wanted.regulator.value, at: 'regulator' };
  const drawdown = airDrawdown(supply, wish, duty);
  if (!drawdown.ok) return drawdown;
  const point = airPoint(supply, drawdown.value.lowest);
  if (!point.ok) return point;
  const changes = hoseChanges(supply, kit, wish);
  if (!changes.ok) return changes;
  const { value } = point;
  return {
    ok: true,
    value: {
      receiver_kPa: inUnit(value.receiver, 'kPa'),
      torch_flow_L_per_min: inUnit(value.torchFlow, 'L_per_min'),
      receiver_flow_L_per_min: inUnit(value.receiverFlow, 'L_per_min'),
      delivered_L_per_min: inUnit(freeAirDelivered(supply.compressor, supply.receiver.cutIn), 'L_per_min'),
      wanted: {
        regulator_kPa: inUnit(wanted.regulator.value, 'kPa'),
        regulator_source: wanted.regulator.source,
        torch_kPa: inUnit(wanted.torch.value, 'kPa'),
        torch_source: wanted.torch.source,
      },
      regulator_kPa: inUnit(value.regulator, 'kPa'),
      torch_kPa: inUnit(value.torch, 'kPa'),
      points: pointReports(value, supply.path),
      choked: value.choked,
      regulating: value.regulating ?? null,
      drawdown: drawdownReport(drawdown.value, duty, travel),
      hose_changes: changes.value,
      cautions: [...drawdown.value.cautions.map(({ message }) => message), ...quickDraw(drawdown.value)],
    },
  };
}

function pointReports(point: AirPoint, path: readonly AirItem[]): readonly AirPointReport[] {
  return point.points.map(({ behind, static: still, flowing }, i) => {
    const item = i === 0 ? undefined : path[i - 1];
    const run = item?.kind === 'hose' || item?.kind === 'pipe' ? item : undefined;
    return {
      behind,
      kind: item?.kind ?? 'receiver',
      length_m: run?.length ?? null,
      bore_mm: run === undefined ? null : inUnit(run.bore, 'mm'),
      static_kPa: inUnit(still, 'kPa'),
      flowing_kPa: inUnit(flowing, 'kPa'),
    };
  });
}

/** The course of the receiver over a duty, stated; `travel` tells how far into a pass a moment lies [m/s]. */
export function drawdownReport(
  drawdown: Drawdown,
  duty: readonly DutyInterval[],
  travel: number,
): DrawdownReport {
  const { samples, below } = drawdown;
  const step = Math.max(1, Math.ceil(samples.length / SAMPLES_MOST));
  // Where torch or compressor starts or stops, and the ends, are kept.
  const kept = samples.filter((sample, i) => {
    const before = samples[i - 1];
    const after = samples[i + 1];
    return (
      i % step === 0 ||
      before === undefined ||
      after === undefined ||
      sample.compressorOn !== after.compressorOn ||
      sample.compressorOn !== before.compressorOn ||
      sample.interval !== after.interval ||
      sample.interval !== before.interval
    );
  });
  const starts = duty.map((_, i) => duty.slice(0, i).reduce((sum, { duration }) => sum + duration, 0));
  const blown = duty.flatMap(({ arc, duration }, i) =>
    arc && duration > 0 ? [{ from: starts[i]!, to: starts[i]! + duration }] : [],
  );
  return {
    time_s: kept.map(({ time }) => time),
    receiver_kPa: kept.map(({ receiver }) => inUnit(receiver, 'kPa')),
    compressor_on: kept.map(({ compressorOn }) => compressorOn),
    passes: blown.map(({ from, to }, i) => ({
      from_s: from,
      to_s: to,
      lowest_kPa: inUnit(drawdown.lowestByPass[i]!, 'kPa'),
    })),
    lowest_kPa: inUnit(drawdown.lowest, 'kPa'),
    lowest_quick_kPa: inUnit(drawdown.lowestQuick, 'kPa'),
    needed_kPa: drawdown.needed === undefined ? null : inUnit(drawdown.needed, 'kPa'),
    below_from_s: below?.time ?? null,
    below_from_pass: below?.pass ?? null,
    below_from_mm: below === undefined ? null : inUnit(below.intoPass * travel, 'mm'),
    compressor_starts: drawdown.compressorStarts,
  };
}

/** Only a quick draw may fail where a slow one holds: a trial tells. */
function quickDraw({ below, belowQuick }: Drawdown): readonly string[] {
  if (below !== undefined || belowQuick === undefined) return [];
  return [
    `The air in the receiver cools when it is drawn quickly, and its pressure then falls up to 1.4 times as fast: in pass ${belowQuick.pass} it may become too low. Watch the receiver’s gauge in a trial of that length.`,
  ];
}

/** The hose changes that restore the pressure at the cut-in; null where nothing is wanting there. */
function hoseChanges(supply: AirSupply, kit: Kit, wish: AirWish): Outcome<HoseChangesReport | null> {
  const { cutIn } = supply.receiver;
  const torch: AirWish = { ...wish, at: 'torch', pressure: wantedPressures(kit).torch.value };
  for (const each of [wish, torch]) {
    const found = leastHoseChanges(supply, each, hosesOfKit(kit), cutIn);
    if (!found.ok) return found;
    const { reached, changes, before, after } = found.value;
    if (reached && changes.length === 0) continue;
    const report = {
      reached,
      changes,
      at: each.at,
      receiver_kPa: inUnit(cutIn, 'kPa'),
      before_kPa: inUnit(before, 'kPa'),
      after_kPa: inUnit(after, 'kPa'),
    };
    return { ok: true, value: { ...report, says: changesSay(report, inUnit(each.pressure, 'kPa')) } };
  }
  return { ok: true, value: null };
}

function changesSay(
  { reached, changes, at, before_kPa, after_kPa }: Omit<HoseChangesReport, 'says'>,
  wanted_kPa: number,
): string {
  const where = at === 'regulator' ? 'behind the regulator' : 'before the torch';
  const short = `Flowing, ${before_kPa.toFixed(0)} kPa stand ${where} at the receiver’s cut-in; ${wanted_kPa.toFixed(0)} kPa are wanted.`;
  if (changes.length === 0) return `${short} No hose in stock mends it.`;
  const list = changes.map((change) => `“${change.out}” for “${change.in}”`).join(', ');
  const result = `${reached ? 'Changing' : 'The best that stock can do, changing'} ${list}, gives ${after_kPa.toFixed(0)} kPa.`;
  return `${short} ${result}`;
}
