import {
  formatAmount,
  formatStated,
  fromUnit,
  type GaugeRow,
  type GaugeStop,
  type Plan,
  shownNumber,
  siOfShown,
  type UnitSystem,
} from '@furrow/engine';

/** What readings are written in: thousandths of an inch, as hundredths would give two rows the same bounds, or tenths of a millimetre [steps of one unit]. */
const STEPS = { inch: 1000, metric: 10 } as const;
const DIGITS = { inch: 3, metric: 1 } as const;

/** A bound of a reading in whole steps [-]. */
function stepsOf(reading_mm: number, units: UnitSystem): number {
  return Math.round(shownNumber(fromUnit(reading_mm, 'mm'), 'reading', units) * STEPS[units]);
}

/** The readings for which a row holds, in words; no reading stands in two rows. */
export function readingText(row: GaugeRow, units: UnitSystem): string {
  const text = (steps: number): string => (steps / STEPS[units]).toFixed(DIGITS[units]);
  const from = stepsOf(row.reading_from_mm, units);
  if (row.reading_to_mm === null) return `${text(from)} and deeper`;
  const end = stepsOf(row.reading_to_mm, units);
  if (row.reading_from_mm <= 0) return `below ${text(end)}`;
  const last = Math.max(from, end - 1);
  return last === from ? text(from) : `${text(from)} to ${text(last)}`;
}

/** Chances of a row that the floor comes out too shallow and too deep, as so many in 100. */
export function riskTexts({
  depth_reached,
  not_too_deep,
}: Pick<GaugeRow, 'depth_reached' | 'not_too_deep'>): readonly [shallow: string, deep: string] {
  return [riskText(1 - depth_reached), riskText(1 - not_too_deep)];
}

/** Heads of the columns that `riskTexts` fill. */
export const RISK_HEADS = ['Too shallow, in 100', 'Too deep, in 100'] as const;

/** The same where there is little room, under a caption that says of what they are. */
export const NARROW_RISK_HEADS = ['Too shallow', 'Too deep'] as const;

/** Always rounded up, so that nothing reads less risky than it is. */
function riskText(risk: number): string {
  if (!Number.isFinite(risk)) return 'unknown';
  const hundreds = 100 * Math.min(1, Math.max(0, risk));
  // counted over some thousands of shops: none at all is not said
  return hundreds < 1
    ? Math.max(0.1, Math.ceil(hundreds * 10 - 1e-6) / 10).toFixed(1)
    : String(Math.ceil(hundreds - 1e-6));
}

/** Why a row says to ask, in the few words that a card has room for. */
const REASONS: Readonly<Record<NonNullable<GaugeRow['reason']>, string>> = {
  unexpected: 'not as expected',
  out_of_reach: 'more is missing than a pass takes off',
  nothing_holds: 'left it is short in places, one more pass goes too deep',
  too_deep: 'too deep in places',
};

/** Why a row says to ask; empty where it does not, or no reason is told. */
export function reasonText({ reason }: Pick<GaugeRow, 'reason'>): string {
  return reason === null ? '' : `: ${REASONS[reason]}`;
}

/** What a row asks for, in words. */
export function actionText(row: GaugeRow, units: UnitSystem): string {
  if (row.action === 'done') return 'run no more passes';
  if (row.action === 'ask' || row.travel_mm_per_min === null)
    return `stop, ask the welding engineer${reasonText(row)}`;
  const travel = `travel ${formatStated(row.travel_mm_per_min, 'mm/min', units)}`;
  // the mean may lie inside the limits while the shallowest places do not
  return row.in_band ? `${travel}, low in places` : travel;
}

/** Where to gauge, with what spread, in one or two sentences. */
export function gaugePlaces(stop: GaugeStop, units: UnitSystem): string {
  const places = stop.station_positions_mm.map((place) => formatStated(place, 'mm', units, 'length'));
  const stations = `${stop.stations} station${stop.stations === 1 ? '' : 's'}`;
  return (
    `Clean and gauge each track at ${stations}: ${places.join(', ')} from the start. ` +
    `The mean is the reading; one reading spreads by ${formatStated(stop.reading_sd_mm, 'mm', units, 'length')}.`
  );
}

/** What to cut before a table after layer 0 can be read; nothing without a trial or a run-in. */
export function tryoutText(plan: Pick<Plan, 'trial' | 'run_in'>, units: UnitSystem): string | undefined {
  const tryout = plan.trial ?? plan.run_in;
  if (tryout === undefined) return undefined;
  const length = tryoutLength(tryout.length_mm, units);
  const travel = formatStated(tryout.travel_mm_per_min, 'mm/min', units);
  const setting = `${formatStated(tryout.current_A, 'A', units)} and ${travel}`;
  if (plan.trial === undefined)
    return `First cut the first ${length} of the seam at ${setting}, gauge it, and run the rest as the table says; deepen this stretch at the end.`;
  const on = tryout.on === 'run_on' ? 'the run-on plate' : 'scrap of the same metal';
  return `First cut a trial of ${length} on ${on} at ${setting}, gauge it, and set the seam as the table says.`;
}

/** Told as a whole number of inches that is not less: a little more of the cut harms nothing, and a tape finds it. */
function tryoutLength(length_mm: number, units: UnitSystem): string {
  const length = fromUnit(length_mm, 'mm');
  const inches = Math.ceil(shownNumber(length, 'length', 'inch') - 1e-6);
  return formatAmount(units === 'inch' ? siOfShown(inches, 'length', 'inch') : length, 'length', units);
}

/** What a row of a run-in says of its stretch at the end; empty for rows of other tables. */
export function deepenText(row: Pick<GaugeRow, 'deepen_travel_mm_per_min'>, units: UnitSystem): string {
  const travel = row.deepen_travel_mm_per_min;
  return travel === null ? '' : `; at the end the first stretch at ${formatStated(travel, 'mm/min', units)}`;
}
