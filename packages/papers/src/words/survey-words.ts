import {
  formatAmount,
  formatStated,
  formatUncertain,
  fromUnit,
  type SurveyReport,
  type SurveySeam,
  type UnitSystem,
} from '@furrow/engine';

type Stretch = SurveySeam['stretches'][number];
type Reading = SurveySeam['readings'][number];

/** Verdict on a seam or a stretch, in words. */
export const SURVEY_VERDICT_WORDS: Readonly<Record<Stretch['verdict'], string>> = {
  holds: 'holds',
  in_doubt: 'in doubt',
  fails: 'fails',
};

/** What adds to the uncertainty of one gauged depth, in words. */
export const GAUGE_PARTS: Readonly<Record<SurveyReport['inputs']['gauge_budget'][number]['what'], string>> = {
  repeatability: 'repeated readings by one hand',
  reproducibility: 'between hands, days or runs',
  resolution: 'smallest step that it shows',
  seating: 'seating on the plate',
  calibration: 'its certificate',
  deviation: 'deviation on the block, not corrected',
};

/** A place along the seam. */
export function seamPlace(millimetres: number, units: UnitSystem): string {
  return formatStated(millimetres, 'mm', units, 'length');
}

/** A small length, as a gauge shows it. */
export function gaugeLength(millimetres: number, units: UnitSystem): string {
  return formatStated(millimetres, 'mm', units, 'reading');
}

/** A spread of readings, or the uncertainty of one. */
export function spreadLength(millimetres: number, units: UnitSystem): string {
  return formatStated(millimetres, 'mm', units, 'spread');
}

const MEASURED_KINDS = { mm: 'length', mm2: 'area', deg: 'angle' } as const;

/** A measured quantity with its uncertainty; undefined where it was declined. */
export function measuredWords(
  quantity: SurveyReport['sections'][number]['depth_mm'],
  unit: 'mm' | 'deg' | 'mm2',
  units: UnitSystem,
): string | undefined {
  if ('declined' in quantity) return undefined;
  const { u95 } = quantity;
  // a step of -0.00 mm is none
  const value = Math.abs(quantity.value) < 0.005 ? 0 : quantity.value;
  return formatUncertain(fromUnit(value, unit), fromUnit(u95, unit), MEASURED_KINDS[unit], units);
}

/** The verdict on a seam in one sentence, the worst first. */
export function seamVerdictWords(seam: SurveySeam, units: UnitSystem): string {
  const length = (verdict: Stretch['verdict']): number =>
    seam.stretches
      .filter((each) => each.verdict === verdict)
      .reduce((sum, { from_mm, to_mm }) => sum + to_mm - from_mm, 0);
  const parts = (['fails', 'in_doubt', 'holds'] as const).flatMap((verdict) =>
    length(verdict) > 0 ? [`${seamPlace(length(verdict), units)} ${SURVEY_VERDICT_WORDS[verdict]}`] : [],
  );
  const whole = {
    holds: 'The groove holds over the whole seam',
    in_doubt: 'The groove is in doubt',
    fails: 'The groove fails',
  }[seam.verdict];
  return `${whole}: ${parts.join(', ')}.`;
}

/** What is wrong with a stretch, and how sure that is. */
export function stretchWords({
  verdict,
  miss,
  chance_wrong_accept: accept,
  chance_wrong_reject: reject,
}: Stretch): string {
  const what = { none: '', shallow: 'too shallow', deep: 'too deep' }[miss];
  if (verdict === 'holds') return `chance that it is out somewhere: ${percent(accept)}`;
  if (verdict === 'fails') return `${what}; chance that it is inside everywhere: ${percent(reject)}`;
  return `may be ${what}; chance that it is out somewhere: ${percent(accept)}`;
}

/** What is said of width and plate left, each by itself. */
export function seamMeasuresWords({ width, remaining }: SurveySeam, units: UnitSystem): string[] {
  const where = (stretches: readonly Stretch[]): string =>
    stretches
      .filter(({ verdict }) => verdict !== 'holds')
      .map(
        ({ from_mm, to_mm, verdict }) =>
          `${seamPlace(from_mm, units)} to ${seamPlace(to_mm, units)} ${SURVEY_VERDICT_WORDS[verdict]}`,
      )
      .join(', ');
  const say = (verdict: Stretch['verdict'], stretches: readonly Stretch[]): string =>
    verdict === 'holds' ? 'holds over the whole seam' : where(stretches);
  const { least_mm: least, most_mm: most } = width.limits;
  return [
    `Width wanted: ${gaugeLength(least, units)} to ${gaugeLength(most, units)}: ${say(width.verdict, width.stretches)}${width.readings === 0 ? ', by the plan alone: no width was measured' : ''}.`,
    ...(width.set_aside === 0
      ? []
      : [
          `${width.set_aside === 1 ? '1 width looks' : `${width.set_aside} widths look`} like a wrong unit or a slipped decimal point, and ${width.set_aside === 1 ? 'is' : 'are'} not used.`,
        ]),
    `Plate left, at least ${gaugeLength(remaining.least_mm, units)}: ${say(remaining.verdict, remaining.stretches)}.`,
  ];
}

/** A chance with no more figures than it is good to. */
function percent(chance: number): string {
  if (chance < 0.005) return 'below 1 %';
  if (chance > 0.995) return 'above 99 %';
  return `${Math.round(100 * chance)} %`;
}

/** Why a reading is not used, and what it would be. */
export function setAsideWords({ at_mm, depth_mm, why, would_be_mm }: Reading, units: UnitSystem): string {
  const read = gaugeLength(depth_mm.value, units);
  const place = seamPlace(at_mm, units);
  if (why === 'outside_seam') return `${place} lies outside the seam; ${read} there is not used.`;
  if (why === 'gauge_failed')
    return `${read} at ${place} was read with a gauge that failed its check, and is not used.`;
  if (why === 'cut_again')
    return `${read} at ${place} was measured before it was cut again, and counts no more.`;
  if (why === 'before_last_pass')
    return `${read} at ${place} was read before the last pass there, and says nothing of the groove as it is.`;
  const would = would_be_mm === null ? '' : ` It would be ${gaugeLength(would_be_mm, units)} then.`;
  const looks = {
    inch_for_mm: 'looks like inches read as millimetres',
    mm_for_inch: 'looks like millimetres read as inches',
    thousandfold: 'looks a thousand times too large',
    thousandth: 'looks a thousand times too small',
    slipped_decimal: 'looks like a slipped decimal point',
  }[why ?? 'slipped_decimal'];
  return `${read} at ${place} ${looks}, and is not used.${would} Correct it where it was written.`;
}

/** What mends a stretch, in sentences. */
export function recutWords(
  { from_mm, to_mm, plan }: SurveySeam['recut'][number],
  units: UnitSystem,
): string[] {
  const weight = (kilograms: number): string => formatStated(kilograms, 'kg', units);
  const first = ((): string => {
    const { passes = 1 } = plan;
    switch (plan.kind) {
      case 'pass':
        return `${passes === 1 ? 'One pass' : `${passes} passes on top of each other`} from ${seamPlace(plan.start_mm!, units)} to ${seamPlace(plan.end_mm!, units)}, run-in and run-out of ${gaugeLength(plan.run_in_mm!, units)} each inside: ${formatStated(plan.current_A!, 'A', units)}, ${formatStated(plan.arc_voltage_V!, 'V', units)}, travel ${formatStated(plan.travel_mm_per_min!, 'mm/min', units)}, to take off ${gaugeLength(plan.take_off_mm!, units)}${passes === 1 ? '' : ' together'}. Chance to reach the depth ${percent(plan.chance_reached!)}, not to go too deep ${percent(plan.chance_not_too_deep!)}, to leave the plate its least ${percent(plan.chance_plate_kept!)}.`;
      case 'weld':
        return `${gaugeLength(plan.over_mm!, units)} too deep on the mean: ${weight(plan.weld_metal_kg!)} of weld metal added, up to the greatest depth alone (90 %: ${weight(plan.weld_metal_band_kg!.p05)} to ${weight(plan.weld_metal_band_kg!.p95)}).`;
      default:
        return `${gaugeLength(plan.missing_mm!, units)} missing on the mean.`;
    }
  })();
  return [first, ...engineerWords(from_mm, to_mm, plan, units), ...plan.says];
}

/** What the welding engineer has to know of a mend: the plate left under it, and the preheat beside that of the job. */
function engineerWords(
  from: number,
  to: number,
  plan: SurveySeam['recut'][number]['plan'],
  units: UnitSystem,
): string[] {
  const { plate_left_mm: left, preheat_planned_degC: planned } = plan;
  if (left === undefined || planned === undefined) return [];
  const degrees = (celsius: number): string => formatStated(celsius, 'degC', units);
  const { preheat_plate_left_degC: thin, preheat_held_fast_degC: held, preheat_asked_degC: asked } = plan;
  const plate = `${gaugeLength(left.p50, units)} (90 %: ${gaugeLength(left.p05, units)} to ${gaugeLength(left.p95, units)})`;
  const alone =
    thin === undefined
      ? ''
      : ` The plate left alone would ask for ${degrees(thin)} (EN 1011-2 method B): no reason for less, the plate beside it draws the heat.`;
  if (plan.kind === 'pass')
    return [
      `It leaves ${plate} of plate at the deepest. Gouge it at the preheat of the seam, ${degrees(planned)}.${alone}`,
    ];
  const added = plan.preheat_added_K ?? 0;
  const more =
    added > 0.5
      ? `${formatAmount(added, 'temperature_difference', units)} more than the seam’s ${degrees(planned)}`
      : `no more than the seam’s ${degrees(planned)}`;
  return [
    `For the welding engineer: from ${seamPlace(from, units)} to ${seamPlace(to, units)} the groove is too deep; ${plate} of plate is left at the deepest. Accept it as it is, weld it back, or take the part out: decide before anything is done.`,
    asked === undefined
      ? `Preheat of the seam: ${degrees(planned)}. What a weld back asks for cannot be told: no method here covers this metal, or carbon and manganese of the plate are not stated.`
      : `Preheat for a weld back: ${degrees(asked)}, ${more}${held === undefined ? '' : `; a short weld is held fast all round, and hydrogen control at high restraint asks for ${degrees(held)} (AWS D1.1, from memory: look it up in the code)`}.${alone}`,
  ];
}

/** What the readings teach the shop of its depths, and why some do not. */
export function teachesWords({ readings, left_out, entry }: SurveySeam['teaches']): string[] {
  const say = (count: number): string => (count === 1 ? '1 reading' : `${count} readings`);
  const why = {
    several_tracks: 'it does not say which of the tracks was read',
    travel_unknown: 'the travel was set by a table at the rig, and what was set is not stated',
    no_pass: 'no pass of the plan runs there',
    nothing_cut: 'next to nothing was cut there, so the arc was out',
  };
  return [
    ...(readings === 0 && left_out.length === 0
      ? []
      : [
          `${say(readings)} can teach the shop how deep it cuts${entry === null ? '' : `, as entry ${String(entry['id'])} of its trials`}.`,
        ]),
    ...left_out.map((each) => `Not ${say(each.readings)}: ${why[each.why]}.`),
  ];
}

/** Why no further place is proposed. */
export function enoughWords(stretches: SurveySeam['stretches']): string {
  return stretches.some(({ verdict }) => verdict === 'in_doubt')
    ? 'No further reading is worth its while: at the rates of the job it costs more than the risk that it would take away. What is in doubt stays in doubt: whoever accepts the groove decides, or it is cut again where it may be too shallow.'
    : 'Enough: no further reading is worth its while.';
}

/** A risk in the money of the job, or in groove to be cut again where no rate is stated. */
export function riskWords(risk: number, unit: SurveySeam['risk_unit'], units: UnitSystem): string {
  return unit === 'm' ? `${formatAmount(risk, 'length', units)} of groove` : `${risk.toFixed(2)} ${unit}`;
}
