import {
  formatAmount,
  fromUnit,
  type Job,
  judgeStation,
  type Plan,
  type Readings,
  type SurveyReport,
  type UnitSystem,
} from '@furrow/engine';
import {
  grooveTable,
  type PaperBlock,
  type PaperDocument,
  surveyBlocks,
  type TableBlock,
} from '../blocks/index.ts';
import { depthDrawing, sectionDrawing } from '../drawing/index.ts';
import { fineNumber, fineUnit, jobWords } from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';
import { mismatchBlocks } from './readings-mismatch.ts';

/** Makes the groove report: empty, with the places to gauge, or filled from a readings file with a verdict per place. */
export function grooveReportDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer } = subject;
  const { job } = read;
  const { units } = options;
  const readings = subject.readings?.readings;
  const stations = readings?.stations;
  return framedPaper(subject, options, {
    above:
      stations === undefined && subject.survey === undefined
        ? 'Groove report, to be filled in'
        : 'Groove report',
    below: [job.groove.purpose, jobWords(job, units)],
    fitted: false,
    roles: ['Gauged by', 'Checked by', 'Accepted by'],
    blocks: [
      {
        kind: 'fields',
        across: 3,
        items: [
          { label: 'Date', ...(readings?.date !== undefined && { value: readings.date }) },
          { label: 'Gauge', ...(readings?.gauge !== undefined && { value: readings.gauge }) },
          { label: 'Plate or part number' },
        ],
      },
      ...mismatchBlocks(subject, units),
      {
        kind: 'columns',
        columns: [
          { weight: 1, blocks: [grooveTable(job, units)] },
          {
            weight: 1.2,
            blocks: [
              {
                kind: 'drawing',
                drawing: sectionDrawing({
                  groove: job.groove,
                  plate: job.plate,
                  units,
                  width: 300,
                  height: 140,
                }),
              },
            ],
          },
        ],
      },
      ...(subject.survey === undefined ? [] : surveyBlocks(subject.survey, readings, units)),
      ...(stations === undefined
        ? subject.survey === undefined
          ? [emptyTable(job, answer.plan, units)]
          : []
        : filledBlocks(stations, job, units, subject.survey)),
      ...(readings?.note === undefined
        ? []
        : [{ kind: 'paragraph', tone: 'plain', text: readings.note } as const]),
      {
        kind: 'paragraph',
        tone: 'plain',
        text:
          `A verdict here is arithmetic on what was read: “tight” lies inside what is accepted by no more than one standard uncertainty of a reading, ` +
          `${formatAmount(readingU(job, subject.survey), 'depth', units)}. Between the places nothing was read. A licensed person decides.`,
      },
    ],
  });
}

/** Standard uncertainty of one gauge reading, as the survey has it [m]. */
function readingU({ kit }: Job, survey: SurveyReport | undefined): number {
  const stated = survey?.inputs.gauge_u_mm ?? null;
  return stated === null ? kit.gauge.reading_sd : fromUnit(stated, 'mm');
}

/** Places along the seam on an empty report, at least [-]. */
const PLACES_LEAST = 5;
/** Rows left empty for places that nobody foresaw [-]. */
const EMPTY_PLACES = 4;

type Stations = NonNullable<Readings['stations']>;

function columns(units: UnitSystem, verdict: string, hand: boolean): TableBlock['columns'] {
  const unit = fineUnit(units);
  return [
    { title: 'No.', align: 'end', weight: 0.3 },
    { title: 'From the start', align: 'end', weight: 0.8, strong: true },
    { title: 'Track', align: 'end', weight: 0.4 },
    { title: `Depth, ${unit}`, align: 'end', weight: 0.7, hand },
    { title: `Width, ${unit}`, align: 'end', weight: 0.7, hand },
    { title: `Root radius, ${unit}`, align: 'end', weight: 0.8, hand },
    { title: verdict, align: 'start', weight: 0.9, strong: true, hand },
    { title: 'Note', align: 'start', weight: 2.2, hand },
  ];
}

function emptyTable(job: Job, plan: Plan | undefined, units: UnitSystem): TableBlock {
  const tracks = Array.from({ length: plan?.tracks ?? 1 }, (_unused, index) => index + 1);
  const rows = placesOf(job, plan).flatMap((place) =>
    tracks.map((track) => [formatAmount(place, 'length', units), String(track)]),
  );
  const more = Array.from({ length: EMPTY_PLACES }, () => ['', '']);
  return {
    kind: 'table',
    caption: 'Places to gauge, groove cleaned; add more where anything looks different',
    small: true,
    hand: true,
    columns: columns(units, 'Holds or fails', true),
    rows: [...rows, ...more].map((row, index) => [String(index + 1), ...row, '', '', '', '', '']),
  };
}

/** As many places as the crew gauges at one stop, or more where the plan does, evenly along the seam [m]. */
function placesOf(job: Job, plan: Plan | undefined): readonly number[] {
  const stops = (plan?.gauge_stops ?? []).map(({ stations }) => stations);
  const count = Math.max(PLACES_LEAST, job.kit.gauge.stations_most, ...stops);
  return Array.from({ length: count }, (_unused, index) => ((index + 0.5) / count) * job.seam.length);
}

function filledBlocks(
  stations: Stations,
  job: Job,
  units: UnitSystem,
  survey: SurveyReport | undefined,
): PaperBlock[] {
  const isGone = (index: number): boolean =>
    survey?.seam?.readings.some(
      ({ from, row, why }) => from === 'gauge' && row === index + 1 && why === 'cut_again',
    ) === true;
  const judged = stations
    .map((station, index) => ({
      station,
      gone: isGone(index),
      judgement: isGone(index)
        ? { verdict: null, words: ['cut again since'] }
        : judgeStation(station, job, units, readingU(job, survey)),
    }))
    .sort(({ station: a }, { station: b }) => a.at - b.at || (a.track ?? 0) - (b.track ?? 0));
  const fine = (value: number | undefined): string => (value === undefined ? '' : fineNumber(value, units));
  return [
    {
      kind: 'heading',
      level: 2,
      text: summary(judged.filter(({ gone }) => !gone).map(({ judgement }) => judgement.verdict)),
    },
    // along the seam the survey draws them with its curve
    ...(stations.length === 0 || (survey?.seam ?? null) !== null
      ? []
      : [
          {
            kind: 'drawing',
            drawing: depthDrawing({
              job,
              stations,
              u: readingU(job, survey),
              units,
              width: 540,
              height: 150,
            }),
          } as const,
        ]),
    {
      kind: 'table',
      caption: 'What was gauged',
      small: true,
      columns: columns(units, 'Verdict', false),
      rows: judged.map(({ station, judgement }, index) => [
        String(index + 1),
        formatAmount(station.at, 'length', units),
        station.track === undefined ? '' : String(station.track),
        fine(station.depth),
        fine(station.width),
        fine(station.root_radius),
        judgement.verdict ?? 'not judged',
        [
          ...judgement.words,
          ...(station.note === undefined ? [] : [station.note]),
          ...(station.by === undefined ? [] : [`by ${station.by}`]),
          ...(station.when === undefined ? [] : [station.when]),
        ].join('; '),
      ]),
    },
  ];
}

/** How many places hold, are tight or fail, in a sentence. */
function summary(verdicts: readonly (string | null)[]): string {
  const count = (verdict: string | null): number => verdicts.filter((each) => each === verdict).length;
  const places = `${verdicts.length} place${verdicts.length === 1 ? '' : 's'} gauged`;
  const parts = [
    `${count('holds')} hold${count('holds') === 1 ? 's' : ''}`,
    `${count('tight')} tight`,
    `${count('fails')} fail${count('fails') === 1 ? 's' : ''}`,
    ...(count(null) === 0 ? [] : [`${count(null)} not judged`]),
  ];
  return `${places}: ${parts.join(', ')}`;
}
