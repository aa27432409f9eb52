import { type Limit, limitOf, type Source } from '../../limit/index.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { NoWorkingLoop, SourceState, WorkingLoop } from './loop-result.ts';
import type { LeadRun } from './loop-runs.ts';
import type { PowerSource } from './power-source.ts';
import { conventionalLoadVoltage, permittedCurrent, ratedMaximum } from './rating.ts';
import { voltageRemedy } from './voltage-remedy.ts';

const CURVE: Source = { text: "the kit's characteristic of each source, Ohm's law", provenance: 'job file' };
const PLATE: Source = { text: "the source's rating plate in the kit", provenance: 'job file' };
const RULE: Source = {
  text: "the source's rating plate in the kit, ten-minute period and square law of IEC 60974-1",
  provenance: 'job file',
};
const CONVENTION: Source = { text: 'IEC 60974-1, conventional load voltage', provenance: 'memory' };

/** Volts needed where the sources join against volts they give there. */
export function voltageLimit(loop: ElectricLoop, runs: readonly LeadRun[], solved: WorkingLoop): Limit {
  return limitOf({
    id: 'terminal_voltage',
    title: 'Volts needed at the source',
    demand: solved.needed_V,
    capacity: solved.available_V,
    unit: 'V',
    sense: 'most',
    hard: true,
    source: CURVE,
    remedy: voltageRemedy(loop, runs, solved),
  });
}

/** The same limit where the current cannot be driven at all: nothing is available then. */
export function unreachable({ leads }: ElectricLoop, voltage: number, why: NoWorkingLoop): Limit {
  const mend =
    leads.length > 0
      ? 'less current, shorter or thicker leads, or another source beside it'
      : 'less current, or another source beside it';
  return limitOf({
    id: 'terminal_voltage',
    title: 'Volts needed at the source',
    demand: voltage,
    capacity: 0,
    unit: 'V',
    sense: 'most',
    hard: true,
    source: CURVE,
    remedy: `${mend}: ${why.reason}`,
  });
}

/** What the sources are loaded with against what their plates say. */
export function loadLimits(
  { sources }: Pick<ElectricLoop, 'sources'>,
  solved: WorkingLoop,
): readonly Limit[] {
  const loads = solved.sources.map((state, i) => ({ state, source: sources[i]!.source }));
  return [
    ratedCurrent(loads),
    dutyLimit(loads, solved.arc_minutes_in_ten),
    ratedVoltage(loads, Math.max(0, -solved.margin_V)),
    ...(loads.length > 1 ? [leastShare(loads)] : []),
  ];
}

interface Load {
  readonly state: SourceState;
  readonly source: PowerSource;
}

/** The load for which a quotient is greatest. */
function worst(loads: readonly Load[], of: (load: Load) => number): Load {
  return loads.reduce((most, load) => (of(load) > of(most) ? load : most));
}

function ratedCurrent(loads: readonly Load[]): Limit {
  const { state, source } = worst(loads, (load) => load.state.current_A / load.state.rated_maximum_A);
  const most = ratedMaximum(source);
  const beside = loads.length > 1 ? 'a setting at which the others take more' : 'a second source beside it';
  return limitOf({
    id: 'source_rated_current',
    title: `Current of the source "${source.name}"`,
    demand: state.current_A,
    capacity: most,
    unit: 'A',
    sense: 'most',
    hard: true,
    source: PLATE,
    remedy: `no more than ${loads.length > 1 ? 'about ' : ''}${Math.floor(most / state.share)} A in all, or ${beside}`,
  });
}

function dutyLimit(loads: readonly Load[], minutes: number): Limit {
  const { state, source } = worst(loads, (load) => -load.state.permissible_minutes);
  const permitted = minutes > 0 ? permittedCurrent(source, minutes) : ratedMaximum(source);
  const all = Math.floor(permitted / state.share);
  const pause =
    state.permissible_minutes > 0
      ? `, or no more than ${state.permissible_minutes.toFixed(1)} minutes of arc in any ten`
      : '';
  return limitOf({
    id: 'source_duty',
    title: `Minutes of arc in ten, source "${source.name}"`,
    demand: minutes * 60,
    capacity: state.permissible_minutes * 60,
    unit: 'min',
    sense: 'most',
    hard: true,
    source: RULE,
    remedy: `no more than ${loads.length > 1 ? 'about ' : ''}${all} A in all${pause}, or another source beside it`,
  });
}

/** A source may give more than its rated load voltage, but is not tested for it: never a hard limit. */
function ratedVoltage(loads: readonly Load[], lacking: number): Limit {
  const ratedOf = (load: Load): { readonly volts: number; readonly onPlate: boolean } => {
    const points = load.source.rating.toSorted((a, b) => a.current - b.current);
    const point = points.find(({ current }) => current >= load.state.current_A) ?? points.at(-1)!;
    return point.voltage === undefined
      ? { volts: conventionalLoadVoltage(point.current), onPlate: false }
      : { volts: point.voltage, onPlate: true };
  };
  // What the arc lacks at full setting is needed at the terminals all the same.
  const neededOf = ({ state }: Load): number => state.terminal_voltage_V + lacking;
  const load = worst(
    loads.filter(({ state }) => !state.drops_out),
    (each) => neededOf(each) / ratedOf(each).volts,
  );
  const rated = ratedOf(load);
  return limitOf({
    id: 'source_rated_voltage',
    title: `Load voltage of the source "${load.source.name}"`,
    demand: neededOf(load),
    capacity: rated.volts,
    unit: 'V',
    sense: 'most',
    hard: false,
    source: rated.onPlate ? PLATE : CONVENTION,
    remedy: 'shorter or thicker leads, less current, or a source rated at a higher load voltage',
  });
}

/** A source that gives less than a hundredth of the current takes no part (judgement, no source). */
function leastShare(loads: readonly Load[]): Limit {
  const { state, source } = worst(loads, (load) => -load.state.share);
  return limitOf({
    id: 'source_share',
    title: `Share of the source "${source.name}"`,
    demand: state.share,
    capacity: 0.01,
    unit: '%',
    sense: 'least',
    hard: false,
    source: { text: "the kit's characteristics; least share: judgement, no source", provenance: 'derived' },
    remedy: `set "${source.name}" to a higher voltage, or the others to a lower one`,
  });
}
