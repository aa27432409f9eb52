import {
  formatAmount,
  formatBound,
  formatStated,
  fromUnit,
  type HeatReport,
  type UnitSystem,
  type Written,
} from '@furrow/engine';
import { rangeText } from '@furrow/papers/words';
import type { Decision } from '../../ui/why/index.ts';

/** What to do about the heat, each with the figure of this job and where it comes from. */
export function heatDecisions(report: Written<HeatReport>, units: UnitSystem): readonly Decision[] {
  const { preheat, preheat_missing: missing, passes, skin, kept_share: kept } = report;
  const gouging = preheat?.gouging;
  const wait = Math.max(0, ...passes.map(({ wait_s }) => wait_s.most));
  const share = `the plate keeps ${formatAmount(kept.least, 'share', units)} to ${formatAmount(kept.most, 'share', units)} of the arc’s energy; no neutral figure was found for it`;
  return [
    {
      act: 'Preheat to',
      value:
        gouging === undefined || !gouging.known
          ? 'not known'
          : formatBound(fromUnit(gouging.temperature_degC, 'degC'), 'temperature', units, 'least'),
      note:
        gouging === undefined
          ? (missing ?? '')
          : gouging.stated
            ? 'as the job states'
            : gouging.known
              ? 'before gouging: that of the re-weld; the welding procedure decides'
              : `before gouging: state the composition from the certificate, or the preheat itself${byThickness(preheat, units)}`,
      of: ['preheatMethodB', 'preheatHydrogenControl'],
      rests: (preheat?.methods ?? []).map(
        ({ method, temperature_degC: asked }) =>
          `${method}: ${asked === null ? 'cannot be used here' : formatStated(asked, 'degC', units)}`,
      ),
    },
    {
      act: 'Wait between passes',
      value: wait < 0.5 ? 'not needed' : formatStated(wait, 's', units),
      note: 'at most, until the plate beside the groove is down to the interpass temperature',
      of: ['solveSection'],
      rests: [
        ...passes.map(
          ({ number, before_degC: before }) =>
            `before pass ${number} the plate beside the groove is at ${rangeText(before, 'degC', units)}`,
        ),
        share,
      ],
    },
    {
      act: 'Grind off',
      value: formatStated(skin.allowance_mm, 'mm', units),
      note: 'all round the groove, to bright metal, before it is welded or left',
      of: ['skinOff'],
      rests: [
        `the section grows from ${formatStated(skin.gouged_area_mm2, 'mm2', units)} to ${formatStated(skin.ground_area_mm2, 'mm2', units)}`,
      ],
    },
    {
      act: 'Watch the back face',
      value: rangeText(report.back_face_degC, 'degC', units),
      note: 'at its hottest: keep away from it what this harms',
      of: ['heatOfPlan', 'solveSection'],
      rests: [share],
    },
  ];
}

/** What a method asks for that needs no composition, where none is stated. */
function byThickness(preheat: Written<HeatReport>['preheat'], units: UnitSystem): string {
  const asked = (preheat?.methods ?? []).flatMap(({ method, temperature_degC: least }) =>
    least === null
      ? []
      : [
          `${method}: ${formatBound(fromUnit(least, 'degC'), 'temperature', units, 'least')} for this thickness`,
        ],
  );
  return asked.length === 0 ? '' : `; ${asked.join('; ')}`;
}
