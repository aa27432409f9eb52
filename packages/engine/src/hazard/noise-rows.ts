import type { StatedUnit } from '../quantity/index.ts';
import { confirmed, hazardRow, recalled } from './hazard-row.ts';
import type { CrewOutcome, RangeOutcome, RowOutcome } from './outcome.ts';

const OSHA = '29 CFR 1910.95';
const EU = 'Directive 2003/10/EC Article 3';

/** A crew's noise held against the rules of each family, the upper end of a band against the figure. */
export function noiseRows(crew: Omit<CrewOutcome, 'rows'>): readonly RowOutcome[] {
  const { fiveDecibel: five, threeDecibel: three, protection } = crew;
  const levels = crew.tasks.flatMap(({ level }) => (level === null ? [] : [level]));
  const loudest: RangeOutcome | undefined =
    levels.length === 0
      ? undefined
      : {
          least: Math.max(...levels.map(({ least }) => least)),
          most: Math.max(...levels.map(({ most }) => most)),
        };
  const row = (
    id: string,
    rule: string,
    range: RangeOutcome | undefined,
    figure: number,
    unit: StatedUnit,
    source: RowOutcome['source'],
  ): RowOutcome =>
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
    source: RowOutcome['source'],
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
    row('osha_pel', '5 dB rule: permissible dose', five?.pelDose, 1, '%', confirmed(`${OSHA}(b)`)),
    row(
      'osha_action',
      '5 dB rule: dose at the action level',
      five?.actionDose,
      0.5,
      '%',
      confirmed(`${OSHA}(c), Appendix A`),
    ),
    row('osha_top', '5 dB rule: highest level of the table', loudest, 115, 'dBA', confirmed(`${OSHA}(b)`)),
    atEar(
      'osha_ear',
      '5 dB rule: average at the ear',
      protection.fiveDecibelAverage,
      90,
      confirmed(`${OSHA} App B`),
    ),
    row(
      'niosh_rel',
      '3 dB rule: NIOSH recommended average',
      three?.average,
      85,
      'dBA',
      confirmed('NIOSH Publication 98-126'),
    ),
    row(
      'eu_lower',
      '3 dB rule: EU lower action value, unprotected',
      three?.exposureLevel,
      80,
      'dBA',
      confirmed(EU),
    ),
    row(
      'eu_upper',
      '3 dB rule: EU upper action value, unprotected',
      three?.exposureLevel,
      85,
      'dBA',
      confirmed(EU),
    ),
    atEar(
      'eu_limit',
      '3 dB rule: EU exposure limit, protector counted',
      protection.exposureLevel,
      87,
      confirmed(EU),
    ),
    row(
      'double_niosh',
      '3 dB rule: average from which NIOSH asks for plug and muff',
      three?.average,
      100,
      'dBA',
      confirmed('NIOSH Publication 98-126'),
    ),
    row(
      'double_msha',
      '5 dB rule: average from which mines ask for plug and muff',
      five?.actionAverage ?? undefined,
      105,
      'dBA',
      confirmed('30 CFR 62'),
    ),
    atEar(
      'target_ear',
      '3 dB rule: upper end of the target under the protector',
      protection.exposureLevel,
      80,
      recalled('EN 458, 75 to 80 dBA'),
    ),
  ];
}

/** What the reader must know of a band: that its ends fall on both sides of the figure. */
function bandNote({ least, most }: RangeOutcome, figure: number): string {
  if (least === most) return '';
  return most > figure && least <= figure
    ? 'at the upper end of the band; its lower end is within'
    : 'upper end of the band';
}
