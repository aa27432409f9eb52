import type { GaugeReport, UnitSystem } from '@furrow/engine';
import { GAUGE_PARTS, SURVEY_VERDICT_WORDS, spreadLength } from '../words/index.ts';
import type { PaperBlock, TableBlock } from './paper-document.ts';

const METHODS: Readonly<Record<GaugeReport['crossed'][number]['method'], string>> = {
  anova: 'analysis of variance',
  anova_pooled: 'analysis of variance, pooled',
  average_range: 'average and range',
};

/** What study and checks say of a gauge: whether it may be used first. */
export function gaugeStudyBlocks(report: GaugeReport, units: UnitSystem): PaperBlock[] {
  const { gauge, reading, checks, crossed, nested, usable, remarks } = report;
  const length = (millimetres: number): string => spreadLength(millimetres, units);
  const last = checks.at(-1);
  const first = usable
    ? reading === null
      ? 'no study tells the uncertainty of a reading'
      : `one reading is within ${length(reading.u95_mm)} of the depth, 95 %`
    : 'not to be used, its last check failed';
  return [
    { kind: 'paragraph', tone: 'lead', text: `${gauge}: ${first}.` },
    ...(reading === null
      ? []
      : [
          table(
            `By ${reading.from}:`,
            ['What adds to it', 'Standard uncertainty'],
            [
              ...reading.budget.map(({ what, u_mm }) => [GAUGE_PARTS[what], length(u_mm)]),
              ['all together', length(reading.u_mm)],
            ],
          ),
        ]),
    ...(crossed.length === 0
      ? []
      : [
          table(
            'The crossed study by each method',
            ['Method', 'Repeatability', 'Reproducibility', 'Both', 'Parts', 'Classes told apart'],
            crossed.map((study) => [
              METHODS[study.method],
              length(study.repeatability_mm),
              length(study.reproducibility_mm),
              length(study.reading_mm),
              length(study.parts_mm),
              study.distinct.toFixed(1),
            ]),
          ),
        ]),
    ...(nested === null
      ? []
      : [
          table(
            'The nested study',
            ['Level', 'Standard deviation'],
            [
              ['readings of one day', length(nested.level1_mm)],
              ['between days', length(nested.days_mm)],
              ['between runs', length(nested.runs_mm)],
            ],
          ),
        ]),
    ...(last === undefined
      ? []
      : [
          {
            kind: 'paragraph',
            tone: 'plain',
            text: `Checked against the block${last.when === null ? '' : ` ${last.when}`}${last.by === null ? '' : ` by ${last.by}`}: off by ${length(last.off_mm)}, standard uncertainty ${length(last.u_mm)}: ${SURVEY_VERDICT_WORDS[last.verdict]}.`,
          } as const,
        ]),
    { kind: 'list', tone: 'plain', items: remarks },
  ];
}

/** A table of words in front and figures behind. */
function table(caption: string, titles: readonly string[], rows: readonly string[][]): TableBlock {
  return {
    kind: 'table',
    caption,
    small: true,
    columns: titles.map((title, at) => ({
      title,
      align: at === 0 ? 'start' : 'end',
      weight: at === 0 ? 2 : 1,
    })),
    rows,
  };
}
