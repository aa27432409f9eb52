import type { GaugeReport, UnitSystem } from '@furrow/engine';
import { SURVEY_VERDICT_WORDS, spreadLength } from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { type TextColumn, textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;

const start = (title: string): TextColumn => ({ title, align: 'start' });
const end = (title: string): TextColumn => ({ title, align: 'end' });

const METHODS: Readonly<Record<GaugeReport['crossed'][number]['method'], string>> = {
  anova: 'analysis of variance',
  anova_pooled: 'analysis of variance, pooled',
  average_range: 'average and range',
};

const PARTS: Readonly<Record<NonNullable<GaugeReport['reading']>['budget'][number]['what'], string>> = {
  repeatability: 'repeated readings by one hand',
  reproducibility: 'between hands, days or runs',
  resolution: 'smallest step that it shows',
  seating: 'seating on the plate',
  calibration: 'its certificate',
  deviation: 'deviation on the block, not corrected',
};

/** Writes what study and checks say of a gauge for the terminal: whether it may be used first. */
export function renderGaugeText(report: GaugeReport, units: UnitSystem): string {
  const { gauge, reading, checks, crossed, nested, usable, remarks } = report;
  const length = (millimetres: number): string => spreadLength(millimetres, units);
  const last = checks.at(-1);
  const first = usable
    ? reading === null
      ? 'no study tells the uncertainty of a reading'
      : `one reading is within ${length(reading.u95_mm)} of the depth, 95 %`
    : 'not to be used, its last check failed';
  const lines = [
    ...wrapped(plainLine(`${gauge}: ${first}.`), WIDTH),
    ...(reading === null
      ? []
      : [
          '',
          ...wrapped(`By ${reading.from}:`, WIDTH),
          ...textTable(
            [start('What adds to it'), end('Standard uncertainty')],
            [
              ...reading.budget.map(({ what, u_mm }) => [PARTS[what], length(u_mm)]),
              ['all together', length(reading.u_mm)],
            ],
            WIDTH,
          ),
        ]),
    ...(crossed.length === 0
      ? []
      : [
          '',
          ...textTable(
            [
              start('Method'),
              end('Repeatability'),
              end('Reproducibility'),
              end('Both'),
              end('Parts'),
              end('Classes told apart'),
            ],
            crossed.map((study) => [
              METHODS[study.method],
              length(study.repeatability_mm),
              length(study.reproducibility_mm),
              length(study.reading_mm),
              length(study.parts_mm),
              study.distinct.toFixed(1),
            ]),
            WIDTH,
          ),
        ]),
    ...(nested === null
      ? []
      : [
          '',
          ...textTable(
            [start('Level'), end('Standard deviation')],
            [
              ['readings of one day', length(nested.level1_mm)],
              ['between days', length(nested.days_mm)],
              ['between runs', length(nested.runs_mm)],
            ],
            WIDTH,
          ),
        ]),
    ...(last === undefined
      ? []
      : [
          '',
          ...wrapped(
            plainLine(
              `Checked against the block${last.when === null ? '' : ` ${last.when}`}${last.by === null ? '' : ` by ${last.by}`}: off by ${length(last.off_mm)}, standard uncertainty ${length(last.u_mm)}: ${SURVEY_VERDICT_WORDS[last.verdict]}.`,
            ),
            WIDTH,
          ),
        ]),
    '',
    ...remarks.flatMap((remark) => wrapped(remark, WIDTH)),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}
