import type { Outcome } from '../issue/index.ts';
import { airOfKit, hosesOfKit, type Kit } from '../kit/index.ts';
import { inUnit } from '../quantity/index.ts';
import {
  type AirItem,
  type AirPoint,
  type AirSupply,
  type AirWish,
  airDrawdown,
  airPoint,
  type Drawdown,
  freeAirDelivered,
  leastHoseChanges,
} from '../supply/index.ts';
import type { AirPointReport, AirReport, DrawdownReport, HoseChangesReport } from './air-report.ts';
import { wantedPressures } from './kit-limits.ts';

/** Points of the receiver's course that are told at most [-]. */
const SAMPLES_MOST = 400;

/** The air of a kit while one pass is cut, in a time and over a length. */
export function reportAir(
  kit: Kit,
  pass: { readonly time: number; readonly length: number },
): Outcome<AirReport> {
  const supply = airOfKit(kit);
  const wanted = wantedPressures(kit);
  const wish: AirWish = { pressure: wanted.regulator.value, at: 'regulator', time: pass.time };
  const drawdown = airDrawdown(supply, wish);
  if (!drawdown.ok) return drawdown;
  const point = airPoint(supply, drawdown.value.lowest_kPa * 1000);
  if (!point.ok) return point;
  const changes = hoseChanges(supply, kit, wish);
  if (!changes.ok) return changes;
  const { value } = point;
  return {
    ok: true,
    value: {
      receiver_kPa: value.receiver_kPa,
      torch_flow_L_per_min: value.torch_flow_L_per_min,
      receiver_flow_L_per_min: value.receiver_flow_L_per_min,
      delivered_L_per_min: inUnit(freeAirDelivered(supply.compressor, supply.receiver.cutIn), 'L_per_min'),
      wanted: {
        regulator_kPa: inUnit(wanted.regulator.value, 'kPa'),
        regulator_source: wanted.regulator.source,
        torch_kPa: inUnit(wanted.torch.value, 'kPa'),
        torch_source: wanted.torch.source,
      },
      regulator_kPa: value.regulator_kPa,
      torch_kPa: value.torch_kPa,
      points: pointReports(value, supply.path),
      choked: value.choked,
      regulating: value.regulating,
      drawdown: drawdownReport(drawdown.value, pass),
      hose_changes: changes.value,
      cautions: drawdown.value.cautions.map(({ message }) => message),
    },
  };
}

function pointReports(point: AirPoint, path: readonly AirItem[]): readonly AirPointReport[] {
  return point.points.map(({ behind, static_kPa, flowing_kPa }, i) => {
    const item = i === 0 ? undefined : path[i - 1];
    const run = item?.kind === 'hose' || item?.kind === 'pipe' ? item : undefined;
    return {
      behind,
      kind: item?.kind ?? 'receiver',
      length_m: run?.length ?? null,
      bore_mm: run === undefined ? null : inUnit(run.bore, 'mm'),
      static_kPa,
      flowing_kPa,
    };
  });
}

function drawdownReport(
  drawdown: Drawdown,
  pass: { readonly time: number; readonly length: number },
): DrawdownReport {
  const { samples, below_from_s } = drawdown;
  const step = Math.max(1, Math.ceil(samples.length / SAMPLES_MOST));
  // Where the compressor starts or stops, and the ends, are kept.
  const kept = samples.filter(
    (sample, i) =>
      i % step === 0 ||
      i === samples.length - 1 ||
      sample.compressor_on !== samples[i + 1]!.compressor_on ||
      sample.compressor_on !== samples[Math.max(0, i - 1)]!.compressor_on,
  );
  return {
    time_s: kept.map(({ time_s }) => time_s),
    receiver_kPa: kept.map(({ receiver_kPa }) => receiver_kPa),
    compressor_on: kept.map(({ compressor_on }) => compressor_on),
    lowest_kPa: drawdown.lowest_kPa,
    needed_kPa: drawdown.needed_kPa,
    below_from_s,
    below_from_mm: below_from_s === null ? null : inUnit((below_from_s / pass.time) * pass.length, 'mm'),
    compressor_starts: drawdown.compressor_starts,
  };
}

/** The hose changes that restore the pressure at the cut-in; null where nothing is wanting there. */
function hoseChanges(supply: AirSupply, kit: Kit, wish: AirWish): Outcome<HoseChangesReport | null> {
  const { cutIn } = supply.receiver;
  const torch: AirWish = { ...wish, at: 'torch', pressure: wantedPressures(kit).torch.value };
  for (const each of [wish, torch]) {
    const found = leastHoseChanges(supply, each, hosesOfKit(kit), cutIn);
    if (!found.ok) return found;
    const { reached, changes, before_kPa, after_kPa } = found.value;
    if (reached && changes.length === 0) continue;
    const report = {
      reached,
      changes,
      at: each.at,
      receiver_kPa: inUnit(cutIn, 'kPa'),
      before_kPa,
      after_kPa,
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
