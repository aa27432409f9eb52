import { formatStated, type HazardReport, type UnitSystem } from '@furrow/engine';
import { crewBlocks, sectionBlocks, verdictTable } from '../blocks/index.ts';
import { breachTexts } from '../words/index.ts';
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
    ...noise.flatMap((crew) => [
      ...crewBlocks(crew, units),
      ...(crew.rows.length === 0 ? [] : [verdictTable('Noise against the rules', crew.rows, units)]),
    ]),
    ...sections.flatMap((section) => [heading(section.title), ...sectionBlocks(section, report, units)]),
    ...titled('Cautions', 'caution', cautions),
    ...titled('Stop work', 'caution', stop_work),
  ]);
}
