import type { StatedUnit } from '../quantity/index.ts';
import type { CrewNoiseReport, HazardRange, HazardRow } from '../result/index.ts';
import { confirmed, hazardRow, recalled } from './hazard-row.ts';

const OSHA = '29 CFR 1910.95';
const EU = 'Directive 2003/10/EC Article 3';

/** A crew's noise held against the rules of each family, the upper end of a band against the figure. */
export function noiseRows(crew: Omit<CrewNoiseReport, 'rows'>): readonly HazardRow[] {
  const { five_dB: five, three_dB: three, protection } = crew;
  const levels = crew.tasks.flatMap(({ level_dBA }) => (level_dBA === null ? [] : [level_dBA]));
  const loudest: HazardRange | undefined =
    levels.length === 0
      ? undefined
      : {
          least: Math.max(...levels.map(({ least }) => least)),
          most: Math.max(...levels.map(({ most }) => most)),
        };
  const row = (
    id: string,
    rule: string,
    range: HazardRange | undefined,
    figure: number,
    unit: StatedUnit,
    source: HazardRow['source'],
  ): HazardRow =>
    hazardRow({
      id,
      rule,
      value: range?.most ?? null,
      figure,
      unit,
      sense: 'most',
      source,
      note: range === undefined ? (crew.missing ?? 'not known') : bandNote(range, figure),
    });
  const atEar = (
    id: string,
    rule: string,
    value: number | null,
    figure: number,
    source: HazardRow['source'],
  ) =>
    hazardRow({
      id,
      rule,
      value,
      figure,
      unit: 'dBA',
      sense: 'most',
      source,
      note: value === null ? protection.says : `with ${protection.worn} worn`,
    });
  return [
    row('osha_pel', '5 dB rule: permissible dose', five?.pel_dose_percent, 100, '%', confirmed(`${OSHA}(b)`)),
    row(
      'osha_action',
      '5 dB rule: dose at the action level',
      five?.action_dose_percent,
      50,
      '%',
      confirmed(`${OSHA}(c), Appendix A`),
    ),
    row('osha_top', '5 dB rule: highest level of the table', loudest, 115, 'dBA', confirmed(`${OSHA}(b)`)),
    atEar(
      'osha_ear',
      '5 dB rule: average at the ear',
      protection.five_dB_average_dBA,
      90,
      confirmed(`${OSHA} App B`),
    ),
    row(
      'niosh_rel',
      '3 dB rule: NIOSH recommended average',
      three?.average_dBA,
      85,
      'dBA',
      confirmed('NIOSH Publication 98-126'),
    ),
    row(
      'eu_lower',
      '3 dB rule: EU lower action value, unprotected',
      three?.exposure_level_dBA,
      80,
      'dBA',
      confirmed(EU),
    ),
    row(
      'eu_upper',
      '3 dB rule: EU upper action value, unprotected',
      three?.exposure_level_dBA,
      85,
      'dBA',
      confirmed(EU),
    ),
    atEar(
      'eu_limit',
      '3 dB rule: EU exposure limit, protector counted',
      protection.exposure_level_dBA,
      87,
      confirmed(EU),
    ),
    row(
      'double_niosh',
      '3 dB rule: average from which NIOSH asks for plug and muff',
      three?.average_dBA,
      100,
      'dBA',
      confirmed('NIOSH Publication 98-126'),
    ),
    row(
      'double_msha',
      '5 dB rule: average from which mines ask for plug and muff',
      five?.action_average_dBA ?? undefined,
      105,
      'dBA',
      confirmed('30 CFR 62'),
    ),
    atEar(
      'target_ear',
      '3 dB rule: upper end of the target under the protector',
      protection.exposure_level_dBA,
      80,
      recalled('EN 458, 75 to 80 dBA'),
    ),
  ];
}

/** What the reader must know of a band: that its ends fall on both sides of the figure. */
function bandNote({ least, most }: HazardRange, figure: number): string {
  if (least === most) return '';
  return most > figure && least <= figure
    ? 'at the upper end of the band; its lower end is within'
    : 'upper end of the band';
}
