import { type Limit, limitOf, type Source } from '../../limit/index.ts';
import { say } from '../../quantity/index.ts';
import {
  FEWER_MINUTES,
  LARGER_SIZE,
  LESS_CURRENT,
  LONGER_PAUSES,
  MORE_PARALLELS,
  MORE_VOLTS,
  SET_HIGHER,
  SOURCE_BESIDE,
  type Way,
} from './electric-change.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { Remedies } from './electric-remedy.ts';
import type { NoWorkingLoop, SourceState, WorkingLoop } from './loop-result.ts';
import type { PowerSource } from './power-source.ts';
import { conventionalLoadVoltage, ratedMaximum } from './rating.ts';

const CURVE: Source = { text: "the kit's characteristic of each source, Ohm's law", provenance: 'job file' };
const PLATE: Source = { text: "the source's rating plate in the kit", provenance: 'job file' };
const RULE: Source = {
  text: "the source's rating plate in the kit, ten-minute period and square law of IEC 60974-1",
  provenance: 'job file',
};
const CONVENTION: Source = { text: 'IEC 60974-1, conventional load voltage', provenance: 'memory' };

/** What can bring the volts needed and those there together. */
const VOLTS: readonly Way[] = [MORE_PARALLELS, LARGER_SIZE, LESS_CURRENT, MORE_VOLTS, SOURCE_BESIDE];

/** Volts needed where the sources join against volts they give there. */
export function voltageLimit(solved: WorkingLoop, remedies: Remedies): Limit {
  return limitOf({
    id: 'terminal_voltage',
    title: 'Volts needed at the source',
    demand: solved.needed_V,
    capacity: solved.available_V,
    unit: 'V',
    sense: 'most',
    hard: true,
    source: CURVE,
    remedy: remedies('terminal_voltage', VOLTS),
  });
}

/** The same limit where the current cannot be driven at all: nothing is available then. */
export function unreachable(voltage: number, why: NoWorkingLoop, remedies: Remedies): Limit {
  const mend = remedies('terminal_voltage', VOLTS);
  return limitOf({
    id: 'terminal_voltage',
    title: 'Volts needed at the source',
    demand: voltage,
    capacity: 0,
    unit: 'V',
    sense: 'most',
    hard: true,
    source: CURVE,
    remedy: () => say`${mend()}: ${why.reason}`,
  });
}

/** What the sources are loaded with against what their plates say. */
export function loadLimits(
  { sources }: Pick<ElectricLoop, 'sources'>,
  solved: WorkingLoop,
  remedies: Remedies,
): readonly Limit[] {
  const loads = solved.sources.map((state, i) => ({ state, source: sources[i]!.source }));
  return [
    ratedCurrent(loads, remedies),
    dutyLimit(loads, solved.arc_minutes_in_ten, remedies),
    ratedVoltage(loads, Math.max(0, -solved.margin_V), remedies),
    ...(loads.length > 1 ? [leastShare(loads, remedies)] : []),
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

function ratedCurrent(loads: readonly Load[], remedies: Remedies): Limit {
  const { state, source } = worst(loads, (load) => load.state.current_A / load.state.rated_maximum_A);
  return limitOf({
    id: 'source_rated_current',
    title: `Current of the source "${source.name}"`,
    demand: state.current_A,
    capacity: ratedMaximum(source),
    unit: 'A',
    sense: 'most',
    hard: true,
    source: PLATE,
    remedy: remedies('source_rated_current', [LESS_CURRENT, SOURCE_BESIDE]),
  });
}

function dutyLimit(loads: readonly Load[], minutes: number, remedies: Remedies): Limit {
  const { state, source } = worst(loads, (load) => -load.state.permissible_minutes);
  return limitOf({
    id: 'source_duty',
    title: `Minutes of arc in ten, source "${source.name}"`,
    demand: minutes * 60,
    capacity: state.permissible_minutes * 60,
    unit: 'min',
    sense: 'most',
    hard: true,
    source: RULE,
    remedy: remedies('source_duty', [LESS_CURRENT, FEWER_MINUTES, LONGER_PAUSES, SOURCE_BESIDE]),
  });
}

/** A source may give more than its rated load voltage, but is not tested for it: never a hard limit. */
function ratedVoltage(loads: readonly Load[], lacking: number, remedies: Remedies): Limit {
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
    remedy: remedies('source_rated_voltage', [MORE_PARALLELS, LARGER_SIZE, LESS_CURRENT, SOURCE_BESIDE]),
  });
}

/** A source that gives less than a hundredth of the current takes no part (judgement, no source). */
function leastShare(loads: readonly Load[], remedies: Remedies): Limit {
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
    remedy: remedies('source_share', [SET_HIGHER]),
  });
}
