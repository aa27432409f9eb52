import {
  type CrewNoiseReport,
  formatStated,
  type HazardReport,
  type HazardSection,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import { noteText, rangeText, sourceText } from '../words/index.ts';
import {
  fieldTable,
  fumeSources,
  fumeTable,
  mixtureBlocks,
  noiseTable,
  verdictTable,
} from './hazard-tables.ts';
import type { PaperBlock, TableBlock } from './paper-document.ts';

/** A crew's noise: its tasks, what each family of rules makes of them, and what is worn. */
export function crewBlocks(crew: CrewNoiseReport, units: UnitSystem): readonly [TableBlock, ...PaperBlock[]] {
  const { five_dB: five, three_dB: three, protection, missing } = crew;
  const minutes = (value: number | null): string => formatStated(value, 'min', units);
  const levels = crew.tasks.flatMap(({ name, measured, level_dBA, source }) =>
    measured || level_dBA === null ? [] : [`level of ${name}: ${sourceText(source)}`],
  );
  const counted =
    protection.attenuation_dB === null
      ? ''
      : `, ${formatStated(protection.attenuation_dB, 'dB', units)} counted on`;
  return [
    noiseTable(crew, units),
    ...(missing === null ? [] : [{ kind: 'list', tone: 'caution', items: [missing] } as const]),
    {
      kind: 'list',
      tone: 'plain',
      items: [
        ...levels,
        ...(five === null || three === null
          ? []
          : [
              `5 dB family (OSHA): ${rangeText(five.pel_dose_percent, '%', units)} of the permissible dose, ${rangeText(five.action_average_dBA, 'dBA', units)} average of the action level`,
              `3 dB family (NIOSH, EU): dose ${rangeText(three.dose_percent, '%', units)}, L_EX,8h ${rangeText(three.exposure_level_dBA, 'dBA', units)}`,
            ]),
        `worn: ${protection.worn}${counted}. ${protection.says}`,
        ...(protection.gouging_time_min === null
          ? []
          : [
              `by the 3 dB rule ${minutes(protection.gouging_time_min)} at the loudest task bring 85 dBA under it: a planning figure, no permission.`,
            ]),
      ],
    },
  ];
}

/** One hazard without its heading: figures, values against rules, and what rules ask in words. */
export function sectionBlocks(
  { id, figures, rows, rules }: HazardSection,
  { fume, field }: HazardReport,
  units: UnitSystem,
): PaperBlock[] {
  return [
    {
      kind: 'list',
      tone: 'plain',
      items: figures.map(
        ({ name, value, unit, note, source }) =>
          `${name}: ${formatStated(value, unit, units)}, ${noteText({ note, source })}.`,
      ),
    },
    ...(rows.length === 0 ? [] : [verdictTable('Against the rules', rows, units)]),
    {
      kind: 'list',
      tone: 'plain',
      items: rules.map(({ text, source }) => `${sentenceText(text, units)} [${sourceText(source)}]`),
    },
    ...(id === 'fume' ? [fumeTable(fume, units), fumeSources(fume), ...mixtureBlocks(fume, units)] : []),
    ...(id === 'field' ? [fieldTable(field, units)] : []),
  ];
}
