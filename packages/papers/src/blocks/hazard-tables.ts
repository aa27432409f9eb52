import {
  type CrewNoiseReport,
  type FieldReport,
  type FumeReport,
  formatStated,
  type HazardRow,
  type HazardSection,
  sentenceText,
  type UnitSystem,
} from '@furrow/engine';
import { figureText, noteText, rangeText, sourceText } from '../words/index.ts';
import type { TableBlock } from './paper-document.ts';

/** A crew's noise: what it does, and by each family of rules what comes of it. */
export function noiseTable(crew: CrewNoiseReport, units: UnitSystem): TableBlock {
  const { five_dB: five, three_dB: three } = crew;
  const shift = formatStated(crew.shift_min, 'min', units);
  const people = crew.people === null ? '' : `, ${crew.people} people`;
  return {
    kind: 'table',
    caption: `Noise: ${crew.name}${people}, shift ${shift}`,
    small: true,
    columns: [
      { title: 'Task', align: 'start', weight: 1.6, strong: true },
      { title: 'Time', align: 'end', weight: 0.7 },
      { title: 'Level', align: 'end', weight: 1 },
      { title: '5 dB rule (OSHA)', align: 'end', weight: 1.2 },
      { title: '3 dB rule (NIOSH, EU)', align: 'end', weight: 1.4 },
    ],
    rows: [
      ...crew.tasks.map((task) => [
        task.name,
        formatStated(task.time_min, 'min', units),
        `${rangeText(task.level_dBA, 'dBA', units)}${task.measured ? ', measured' : ''}`,
        task.osha_time_min === null
          ? '–'
          : `${formatStated(task.osha_time_min, 'min', units)} set against it`,
        task.niosh_time_min === null
          ? '–'
          : `${formatStated(task.niosh_time_min, 'min', units)} set against it`,
      ]),
      [
        'Whole shift',
        shift,
        crew.quiet_min > 0 ? `${formatStated(crew.quiet_min, 'min', units)} quiet` : '',
        five === null ? '–' : `dose ${rangeText(five.pel_dose_percent, '%', units)}`,
        three === null ? '–' : `L_EX,8h ${rangeText(three.exposure_level_dBA, 'dBA', units)}`,
      ],
    ],
  };
}

/** The crews' noise against the rules, side by side; each rule names its family. */
export function crewTables(crews: readonly CrewNoiseReport[], units: UnitSystem): readonly TableBlock[] {
  const together = crews.flatMap((_crew, index) =>
    index % CREWS_BESIDE === 0 ? [crews.slice(index, index + CREWS_BESIDE)] : [],
  );
  return together.map(
    (some): TableBlock => ({
      kind: 'table',
      caption: 'Noise against the rules',
      small: true,
      columns: [
        { title: 'Rule', align: 'start', weight: 2.2, strong: true },
        { title: 'Figure named', align: 'end', weight: 0.9 },
        ...some.map(({ name }) => ({ title: name, align: 'start' as const, weight: 1.5 })),
        { title: 'Source', align: 'start', weight: 1.5 },
      ],
      rows: (some[0]?.rows ?? []).map((rule) => [
        rule.rule,
        figureText(rule, units),
        ...some.map(({ rows }) => {
          const own = rows.find(({ id }) => id === rule.id);
          return own === undefined
            ? '–'
            : `${own.value === null ? '' : `${formatStated(own.value, own.unit, units)}: `}${own.verdict}`;
        }),
        sourceText(rule.source),
      ]),
    }),
  );
}

/** Crews that stand side by side on a sheet [-]. */
const CREWS_BESIDE = 3;

/** Values held against rules. */
export function verdictTable(caption: string, rows: readonly HazardRow[], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption,
    small: true,
    columns: [
      { title: 'Rule', align: 'start', weight: 1.9, strong: true },
      { title: 'There is', align: 'end', weight: 0.8 },
      { title: 'Figure named', align: 'end', weight: 1.05 },
      { title: 'Verdict', align: 'start', weight: 1.35, strong: true },
      { title: 'Note and source', align: 'start', weight: 2.5, below: 'by_row' },
    ],
    rows: rows.map((row) => [
      row.rule,
      formatStated(row.value, row.unit, units),
      figureText(row, units),
      row.verdict,
      noteText(row),
    ]),
  };
}

/** Substances to reckon with and their limits by every set. */
export function fumeTable({ substances }: FumeReport, units: UnitSystem): TableBlock {
  const sets = substances[0]?.limits.map(({ set }) => set) ?? [];
  return {
    kind: 'table',
    caption: 'Fume and gas to reckon with',
    small: true,
    columns: [
      { title: 'Substance', align: 'start', weight: 1.4, strong: true },
      { title: 'Why', align: 'start', weight: 1.8 },
      ...sets.map((set) => ({ title: set, align: 'start' as const, weight: 1.3 })),
      { title: 'Measured', align: 'end', weight: 0.9 },
    ],
    rows: substances.map(({ name, why, limits, measured_mg_per_m3: measured }) => [
      name,
      why,
      ...limits.map(({ written, source }) =>
        written === '' ? 'not covered' : `${written}${source?.provenance === 'memory' ? ' (memory)' : ''}`,
      ),
      formatStated(measured, 'mg/m3', units),
    ]),
  };
}

/** What rules ask in words, with where they stand. */
export function ruleTable(sections: readonly HazardSection[], units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'What the rules ask in words',
    small: true,
    columns: [
      { title: 'Hazard', align: 'start', weight: 0.8, strong: true },
      { title: 'Rule', align: 'start', weight: 3.4 },
      { title: 'Source', align: 'start', weight: 1.6 },
    ],
    rows: sections.flatMap(({ title, rules }) =>
      rules.map(({ text, source }, index) => [
        index === 0 ? title : '',
        sentenceText(text, units),
        sourceText(source),
      ]),
    ),
  };
}

/** How far the magnetic field reaches from the leads. */
export function fieldTable({ apart_mm, distances }: FieldReport, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: 'How far the field reaches',
    small: true,
    columns: [
      { title: 'Field', align: 'start', weight: 0.8 },
      { title: 'For', align: 'start', weight: 2 },
      { title: 'Single lead', align: 'end', weight: 1 },
      { title: `Pair, ${formatStated(apart_mm, 'mm', units)} apart`, align: 'end', weight: 1 },
      { title: 'Source', align: 'start', weight: 2 },
    ],
    rows: distances.map(({ field_mT, what, single_mm, pair_mm, source }) => [
      formatStated(field_mT, 'mT', units),
      what,
      formatStated(single_mm, 'mm', units),
      formatStated(pair_mm, 'mm', units),
      sourceText(source),
    ]),
  };
}

/** The additive index of what was measured, by each set of limits. */
export function mixtureText({ mixtures }: FumeReport, units: UnitSystem): string {
  const each = mixtures.map(({ set, index, verdict, not_covered }) => {
    const without = index === null || not_covered.length === 0 ? '' : ` (without ${not_covered.join(', ')})`;
    return `${set} ${formatStated(index, '-', units)}, ${verdict}${without}`;
  });
  return `Additive index of what was measured, at most 1: ${each.join('; ')}.`;
}

/** Limits of each substance by every set, with what was measured and the air that would keep to it. */
export function fumeLimitTable({ set, substances }: FumeReport, units: UnitSystem): TableBlock {
  return {
    kind: 'table',
    caption: `Substances to reckon with; air flows by the ${set}`,
    small: true,
    columns: [
      { title: 'Substance', align: 'start', weight: 1.4 },
      { title: 'Set', align: 'start', weight: 1 },
      { title: 'Limit', align: 'start', weight: 1.4 },
      { title: 'Measured', align: 'end', weight: 0.9 },
      { title: 'Verdict', align: 'start', weight: 1 },
      { title: 'Air if all were it', align: 'end', weight: 1 },
    ],
    rows: substances.flatMap(({ name, measured_mg_per_m3, highest_mg_per_m3, limits }) =>
      limits.map((limit, index) => [
        index === 0 ? name : '',
        limit.set,
        limit.written === '' ? 'not covered' : limit.written,
        formatStated(limit.ceiling ? highest_mg_per_m3 : measured_mg_per_m3, 'mg/m3', units),
        limit.verdict,
        formatStated(limit.flow_if_all_m3_per_min, 'm3/min', units),
      ]),
    ),
  };
}
