import type { Job } from '../job/index.ts';
import { electricOfKit, type Kit } from '../kit/index.ts';
import type { Candidate } from '../limit/index.ts';
import { middleLaw, processLimits, type RemovalBelief } from '../removal/index.ts';
import type {
  ElectricPoint,
  ElectricReport,
  JointReport,
  LeadReport,
  SenseReport,
  SourceReport,
  TemperatureCurve,
} from '../result/index.ts';
import {
  type Characteristic,
  type ElectricLoop,
  type Lead,
  type LeadState,
  passDuty,
  type SourceState,
  senseWireError,
  solveLoop,
  sourceVoltage,
  type WorkingLoop,
} from '../supply/index.ts';

const CELSIUS = 273.15;
/** Points of a temperature curve that are told at most [-]. */
const POINTS_MOST = 240;

/** The loop at a setting, as solved and as told. */
export interface SolvedElectric {
  readonly loop: ElectricLoop;
  readonly solved: WorkingLoop | undefined;
  readonly report: ElectricReport;
}

/** Solves the electric loop of a kit at a setting, through the duty of all its passes. */
export function reportElectric(
  kit: Kit,
  candidate: Candidate,
  job: Job,
  posterior: RemovalBelief,
): SolvedElectric {
  const { current, voltage } = candidate;
  const loop: ElectricLoop = {
    ...electricOfKit(kit).electric,
    arc: { holds: 'current', current, voltage },
    duty: passDuty(candidate, job),
  };
  const outcome = solveLoop(loop);
  if (!outcome.ok) throw new Error(`a kit that was read cannot be solved: ${outcome.issues[0]?.message}`);
  if (outcome.value.kind === 'no_operating_point') return { loop, solved: undefined, report: outcome.value };
  return { loop, solved: outcome.value, report: pointOf(loop, outcome.value, { candidate, job, posterior }) };
}

/** What tells how deep an arc digs, and whether it may be run. */
interface Removal {
  readonly candidate: Candidate;
  readonly job: Job;
  readonly posterior: RemovalBelief;
}

function pointOf(loop: ElectricLoop, solved: WorkingLoop, removal: Removal): ElectricPoint {
  const laid = new Map(
    [...loop.sources.flatMap(({ leads = [] }) => leads), ...loop.leads].map((lead) => [lead.name, lead]),
  );
  const inputs = solved.sources.map(({ input }) => input?.apparent_VA);
  return {
    kind: 'operating_point',
    current_A: solved.current_A,
    arc_voltage_V: solved.arc_voltage_V,
    needed_V: solved.needed_V,
    available_V: solved.available_V,
    margin_V: solved.margin_V,
    arc_kW: solved.arc_W / 1000,
    output_kW: solved.output_W / 1000,
    loss_W: solved.loss_W,
    input_kVA: inputs.every((apparent) => apparent !== undefined)
      ? inputs.reduce((sum, apparent) => sum + apparent, 0) / 1000
      : null,
    arc_minutes_in_ten: solved.arc_minutes_in_ten,
    sources: solved.sources.map((state, i) => sourceReport(state, loop.sources[i]!.source.characteristic)),
    leads: solved.leads.map((state) => leadReport(state, laid.get(state.name)!)),
    losses: solved.losses.map(({ lead, joint, drop_V, loss_W }) => ({
      lead,
      joint: joint ?? null,
      drop_V,
      loss_W,
    })),
    sense: senseReports(loop, solved, removal),
    cautions: solved.cautions,
  };
}

function sourceReport(state: SourceState, characteristic: Characteristic): SourceReport {
  const { input } = state;
  return {
    name: state.name,
    current_A: state.current_A,
    share_percent: state.share * 100,
    terminal_voltage_V: state.terminal_voltage_V,
    no_load_voltage_V: sourceVoltage(characteristic, 0),
    permissible_minutes: state.permissible_minutes,
    rated_maximum_A: state.rated_maximum_A,
    drops_out: state.drops_out,
    input_kW: input === undefined ? null : input.power_W / 1000,
    input_kVA: input?.apparent_VA === undefined ? null : input.apparent_VA / 1000,
    line_current_A: input?.line_current_A ?? null,
  };
}

function leadReport(state: LeadState, lead: Lead): LeadReport {
  const { steady, duty } = state;
  return {
    name: state.name,
    side: state.side,
    source: state.source ?? null,
    size: state.size,
    parallels: state.parallels,
    length_m: lead.length,
    current_A: state.current_A,
    resistance_mohm: state.resistance_ohm * 1000,
    drop_V: state.drop_V,
    temperature_C: (duty?.peak_K ?? state.temperature_K) - CELSIUS,
    steady_C: steady.kind === 'steady' ? steady.temperature_K - CELSIUS : null,
    steady_says: steady.kind === 'steady' ? null : steady.reason,
    insulation_limit_C: state.insulation_limit_K - CELSIUS,
    insulation_limit_provenance: state.insulation_limit_provenance,
    time_constant_s: state.time_constant_s,
    time_to_limit_s: state.time_to_limit_s ?? null,
    course: curveOf(duty?.history ?? []),
    joints: state.joints.map(
      ({ name, drop_V, heat_W, rise_K }, i): JointReport => ({
        name,
        resistance_mohm: (lead.joints?.[i]?.resistance ?? 0) * 1000,
        drop_mV: drop_V * 1000,
        heat_W,
        rise_K: rise_K ?? null,
      }),
    ),
  };
}

/** The course with as many points as a drawing can show, its ends and its highest point among them. */
function curveOf(
  history: readonly { readonly time_s: number; readonly temperature_K: number }[],
): TemperatureCurve {
  const step = Math.max(1, Math.ceil(history.length / POINTS_MOST));
  const highest = history.reduce(
    (best, point, i) => (point.temperature_K > history[best]!.temperature_K ? i : best),
    0,
  );
  const kept = history.filter((_, i) => i % step === 0 || i === highest || i === history.length - 1);
  return {
    time_s: kept.map(({ time_s }) => time_s),
    temperature_C: kept.map(({ temperature_K }) => temperature_K - CELSIUS),
  };
}

/** Wrong landings of the sense wires that leave leads of the whole current between them. */
function senseReports(
  loop: ElectricLoop,
  solved: WorkingLoop,
  { candidate, job, posterior }: Removal,
): readonly SenseReport[] {
  const limits = processLimits(posterior.meltingEnergy);
  const most = solved.sources.reduce((sum, source) => sum + source.rated_maximum_A, 0);
  // The law holds within the limits of process and sources; beyond them no depth is told.
  const known = (current: number, voltage: number): boolean =>
    current <= most &&
    limits({ ...candidate, current, voltage }, job).every(
      ({ hard, verdict }) => !hard || verdict !== 'fails',
    );
  const set = turnedDown(loop, solved);
  const named = (side: Lead['side']): string[] =>
    loop.leads.flatMap((lead) => (lead.side === side ? [lead.name] : []));
  const [electrode, work] = [named('electrode'), named('work')];
  const landings = [
    { landed: 'work wire at the source’s work terminal, not at the plate', between: work },
    { landed: 'electrode wire at the source’s electrode terminal, not at the head', between: electrode },
    { landed: 'both wires at the source’s terminals', between: [...electrode, ...work] },
  ].filter(
    ({ between }, i, all) => between.length > 0 && (i < 2 || all.every((each) => each.between.length > 0)),
  );
  return landings.flatMap(({ landed, between }) => {
    const error = senseWireError(set, between);
    if (!error.ok || error.value.kind === 'no_operating_point') return [];
    const { read_V, arc_voltage_V, error_V, current_A, arc_length_change_m, says } = error.value;
    const power = (arc_voltage_V * current_A) / (solved.arc_voltage_V * solved.current_A);
    const changes = arc_length_change_m.map((metres) => metres * 1000);
    return [
      {
        landed,
        between,
        read_V,
        arc_voltage_V,
        error_V,
        current_A,
        arc_length_change_mm: { least: Math.min(...changes), most: Math.max(...changes) },
        depth_change_percent: known(current_A, arc_voltage_V)
          ? (power ** middleLaw(posterior)[1]! - 1) * 100
          : null,
        says: known(current_A, arc_voltage_V)
          ? says
          : `${says} Arc or current then lies beyond the limits of process or sources: do not run it so.`,
      },
    ];
  });
}

/** The loop with its feed holding the arc's voltage and its sources turned down until they give just the set current. */
function turnedDown(loop: ElectricLoop, { margin_V, arc_voltage_V }: WorkingLoop): ElectricLoop {
  const lower = (characteristic: Characteristic): Characteristic =>
    characteristic.kind === 'points'
      ? {
          ...characteristic,
          points: characteristic.points.map(({ current, voltage }) => ({
            current,
            voltage: voltage - margin_V,
          })),
        }
      : { ...characteristic, no_load_voltage: characteristic.no_load_voltage - margin_V };
  return {
    ...loop,
    sources: loop.sources.map((branch) => ({
      ...branch,
      source: { ...branch.source, characteristic: lower(branch.source.characteristic) },
    })),
    arc: { holds: 'voltage', voltage: arc_voltage_V },
  };
}
