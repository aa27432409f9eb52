import type { SurveyReport } from '@furrow/engine';
import { seamPlace } from '@furrow/papers';
import { quantityTable } from '@furrow/papers/blocks';
import { sectionDrawing } from '@furrow/papers/drawing';
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { BlockTable } from '../../ui/block/index.ts';
import { DrawingView, NotReadYet, useSize } from '../../ui/drawing/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import type { ShownSurvey } from './groove-state.ts';

type Section = SurveyReport['sections'][number];

/** Rows of wild points that are named one by one at most [-]. */
const NAMED_MOST = 12;

/** A scanned section over the wanted shape, and what it measures with how surely, or why not. */
export function SectionPanel({ shown }: { readonly shown: ShownSurvey }): VNode | null {
  return shown.report.sections.length === 0 ? null : <Sections shown={shown} />;
}

function Sections({ shown }: { readonly shown: ShownSurvey }): VNode | null {
  const units = useUnits();
  const { sections } = shown.report;
  const [chosen, setChosen] = useState(0);
  const section = sections[Math.min(chosen, sections.length - 1)];
  const [box, { width }] = useSize<HTMLDivElement>();
  const { groove, plate } = shown.planned.read.job;
  const drawing = useMemo(
    () =>
      width === 0 || section?.outline === undefined || section.outline === null
        ? undefined
        : sectionDrawing({ groove, plate, measured: section.outline, units, width, height: 330 }),
    [groove, plate, section, units, width],
  );
  if (section === undefined) return null;
  return (
    <section class="panel groove-section" aria-labelledby="measured-section-title">
      <header class="panel-head">
        <h2 id="measured-section-title">Section as scanned</h2>
        <label>
          Section{' '}
          <select value={String(chosen)} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
            {sections.map((each, index) => (
              <option key={`${each.file}${index}`} value={String(index)}>
                {nameOf(each, index, units)}
              </option>
            ))}
          </select>
        </label>
      </header>
      <div class="groove-section-parts">
        <div ref={box} class="drawing-box">
          {section.outline === null ? (
            <p>No plate line was found, so nothing is drawn.</p>
          ) : drawing === undefined ? (
            <NotReadYet />
          ) : (
            <DrawingView drawing={drawing} />
          )}
        </div>
        <BlockTable table={quantityTable(section, units)} />
      </div>
      <p class="panel-lead">{pointWords(section)}</p>
      {section.remarks.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </section>
  );
}

function nameOf({ file, station_mm }: Section, index: number, units: 'metric' | 'inch'): string {
  return `${index + 1}: ${station_mm === null ? 'place not known' : `at ${seamPlace(station_mm, units)}`}, ${file}`;
}

/** What became of the points of a section. */
function pointWords({ points: { read, missing, outliers } }: Section): string {
  const rows = outliers.slice(0, NAMED_MOST).join(', ');
  const more = outliers.length > NAMED_MOST ? ` and ${outliers.length - NAMED_MOST} more` : '';
  return [
    `${read} points.`,
    ...(missing === 0 ? [] : [`${missing} have no value.`]),
    ...(outliers.length === 0
      ? ['None stands apart.']
      : [`${outliers.length} stand apart and do not count: rows ${rows}${more}.`]),
  ].join(' ');
}
