import {
  type CrewNoiseReport,
  formatStated,
  type HazardReport,
  type HazardSection,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import {
  fieldTable,
  fumeLimitTable,
  mixtureText,
  noiseTable,
  type PaperBlock,
  verdictTable,
} from '../blocks/index.ts';
import { breachTexts, noteText, rangeText, sourceText } from '../words/index.ts';
import { blocksToText } from './block-to-text.ts';
import { heading, paragraph, titled } from './told.ts';

/** Writes for the terminal what a job asks of the people around it. */
export function renderHazardText(report: HazardReport, title: string, units: UnitSystem): string {
  const { setting, breaches, cautions, stop_work, noise, sections, defers } = report;
  return blocksToText([
    { kind: 'heading', level: 1, text: title, below: [defers] },
    paragraph(
      `${formatStated(setting.current_A, 'A', units)} ${setting.of === 'plan' ? 'in the plan' : 'at most from the source, for there is no plan'}, ` +
        `${setting.torches} ${setting.torches === 1 ? 'torch' : 'torches'} at once, ${setting.place.replace('_', ' ')}, ` +
        `push angle ${formatStated(setting.push_angle_deg, 'deg', units)}.`,
    ),
    ...titled('Over or short of a figure named', 'caution', breachTexts(breaches, units)),
    ...noise.flatMap((crew) => crewBlocks(crew, units)),
    ...sections.flatMap((section) => sectionBlocks(section, report, units)),
    ...titled('Cautions', 'caution', cautions),
    ...titled('Stop work', 'caution', stop_work),
  ]);
}

function crewBlocks(crew: CrewNoiseReport, units: UnitSystem): PaperBlock[] {
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
    ...(crew.rows.length === 0 ? [] : [verdictTable('Noise against the rules', crew.rows, units)]),
  ];
}

function sectionBlocks(
  { id, title, figures, rows, rules }: HazardSection,
  { fume, field }: HazardReport,
  units: UnitSystem,
): PaperBlock[] {
  return [
    heading(title),
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
    ...(id === 'fume'
      ? [
          fumeLimitTable(fume, units),
          {
            kind: 'list',
            tone: 'plain',
            items: fume.substances.map(({ name, why }) => `${name}: ${why}.`),
          } as const,
          paragraph(mixtureText(fume, units)),
        ]
      : []),
    ...(id === 'field' ? [fieldTable(field, units)] : []),
  ];
}
