import {
  formatBand,
  formatBound,
  formatStated,
  fromUnit,
  type HeatReport,
  type Job,
  type UnitSystem,
  type Written,
} from '@furrow/engine';
import { rangeText } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { Figure } from '../../ui/figure/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

interface HeatFiguresProps {
  readonly report: Written<HeatReport>;
  /** What the job says of the heat: what is behind the plate, and a preheat of its own. */
  readonly heat: Job['heat'];
}

/** The heat in big numbers; each a band from little to much heat kept by the plate. */
export function HeatFigures({ report, heat }: HeatFiguresProps): VNode {
  const units = useUnits();
  const { kept_share, transformation, hardness, skin, passes } = report;
  const limit = report.limits.find(({ id }) => id === 'back_face_field');
  const behind = heat.back_face;
  const gouging = gougingText(report, heat.preheat, units);
  const wait = passes.reduce((sum, pass) => sum + pass.wait_s.most, 0);
  const critical = (celsius: number | undefined): string =>
    celsius === undefined ? '' : formatStated(celsius, 'degC', units);
  return (
    <dl class="headline heat-figures">
      <Figure
        name="Back face"
        value={rangeText(report.back_face_degC, 'degC', units)}
        note={
          limit === undefined
            ? `highest; no limit is stated${behind === undefined ? '' : ` for ${behind}`}`
            : `at most ${formatStated(limit.capacity, limit.unit, units)}${behind === undefined ? '' : ` for ${behind}`}: ${limit.verdict}`
        }
      />
      {report.width_past_ac1_mm === null ? null : (
        <Figure
          name="Width past Ac1"
          value={rangeText(report.width_past_ac1_mm, 'mm', units)}
          note={`over ${critical(transformation?.ac1_degC)} beside the groove, both sides${
            report.width_past_ac3_mm === null
              ? ''
              : `; past Ac3 ${rangeText(report.width_past_ac3_mm, 'mm', units)}`
          }`}
        />
      )}
      {report.depth_past_ac1_mm === null ? null : (
        <Figure
          name="Depth past Ac1"
          value={rangeText(report.depth_past_ac1_mm, 'mm', units)}
          note="below the groove’s floor"
        />
      )}
      <Figure
        name="t8/5 at the surface"
        value={report.t85_s === null ? '–' : rangeText(report.t85_s, 's', units)}
        note={
          report.t85_s === null
            ? 'the groove’s final surface does not pass both 800 and 500 °C'
            : 'from 800 to 500 °C, of the field'
        }
      />
      <Figure
        name="Hardness"
        value={
          hardness === null
            ? '–'
            : rangeText({ least: hardness.least_HV, most: hardness.most_HV }, 'HV', units)
        }
        note={
          hardness === null
            ? (report.hardness_missing ?? '')
            : `over ${hardness.formulas.length} formulas; the skin left on ${formatStated(hardness.skin_HV, 'HV', units)}`
        }
      />
      <Figure name="Preheat for gouging" value={gouging.value} note={gouging.note} />
      <Figure
        name="Waits between passes"
        value={wait < 0.5 ? 'none' : formatStated(wait, 's', units)}
        note="at most, for the interpass temperature"
      />
      <Figure
        name="Grinding"
        value={formatStated(skin.allowance_mm, 'mm', units)}
        note={`adds ${skin.added_percent.toFixed(0)} % to the refill; plate keeps ${formatBand(kept_share.least, kept_share.most, 'share', units)} of the arc’s energy`}
      />
    </dl>
  );
}

/** The plate's temperature when gouging begins; without a rule for the metal it is what the job states. */
function gougingText(
  { preheat, preheat_missing }: Written<HeatReport>,
  stated: number | undefined,
  units: UnitSystem,
): { readonly value: string; readonly note: string } {
  if (preheat !== null && !preheat.gouging.known)
    return { value: 'not known', note: 'state the composition from the certificate, or the preheat itself' };
  if (preheat !== null) {
    return {
      value: formatBound(fromUnit(preheat.gouging.temperature_degC, 'degC'), 'temperature', units, 'least'),
      note: preheat.gouging.stated
        ? 'as the job states'
        : 'that of the re-weld (common practice); can be changed',
    };
  }
  if (stated !== undefined)
    return { value: formatBound(stated, 'temperature', units, 'least'), note: 'as the job states' };
  return { value: 'not covered', note: preheat_missing ?? '' };
}
