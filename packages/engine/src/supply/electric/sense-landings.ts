import type { Job } from '../../job/index.ts';
import type { Candidate } from '../../limit/index.ts';
import { middleLaw, processLimits, type RemovalBelief } from '../../removal/index.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { Lead } from './lead.ts';
import type { WorkingLoop } from './loop-result.ts';
import type { Characteristic } from './power-source.ts';
import { senseWireError } from './sense-wire.ts';

/** What tells how deep an arc digs, and whether it may be run. */
export interface ArcAtWork {
  readonly candidate: Candidate;
  readonly job: Job;
  readonly belief: RemovalBelief;
}

/** What the sense wires landed in one wrong place would do. */
export interface SenseLanding {
  /** Where they would be landed, in words. */
  readonly landed: string;
  /** Leads that lie between the wires then. */
  readonly between: readonly string[];
  /** What the wires would read [V]. */
  readonly read: number;
  /** What the arc would have [V]. */
  readonly arcVoltage: number;
  /** Read less true [V]. */
  readonly error: number;
  /** Current then [A]. */
  readonly current: number;
  /** Change of the arc's length, negative is shorter. */
  readonly arcLengthChange: {
    /** Least change, with its sign [m]. */
    readonly least: number;
    /** Greatest change, with its sign [m]. */
    readonly most: number;
  };
  /** Change of the median depth by the removal law; null beyond the limits of process or sources [-]. */
  readonly depthChange: number | null;
  readonly says: string;
}

/**
 * What each wrong landing of the sense wires would do: those that leave leads of the whole current between them.
 *
 * The feed holds what the wires read, so the arc gets the rest; the depth follows by the removal law.
 *
 * @param loop - the electric loop [record], as it was solved
 * @param solved - the loop where sources, leads and arc agree [record], from `solveLoop`
 * @param arc - setting, job and what is known of removal [record], of the same plan
 * @returns one landing each [list]; none where no lead carries the whole current
 * @source none: composition
 * @example
 * const loop = { sources: [], leads: [], arc: { holds: 'current', current: 600, voltage: 40 } };
 * senseLandings(loop, { sources: [], margin_V: 0, arc_voltage_V: 40 }, { belief: { meltingEnergy: 1e10 } }) // => []
 */
export function senseLandings(
  loop: ElectricLoop,
  solved: WorkingLoop,
  { candidate, job, belief }: ArcAtWork,
): readonly SenseLanding[] {
  const limits = processLimits(belief.meltingEnergy);
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
    return [
      {
        landed,
        between,
        read: read_V,
        arcVoltage: arc_voltage_V,
        error: error_V,
        current: current_A,
        arcLengthChange: {
          least: Math.min(...arc_length_change_m),
          most: Math.max(...arc_length_change_m),
        },
        depthChange: known(current_A, arc_voltage_V) ? power ** middleLaw(belief)[1]! - 1 : null,
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
