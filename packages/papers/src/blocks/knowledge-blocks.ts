import type { KnowledgeReport, NextTrialReport, UnitSystem } from '@furrow/engine';
import { driftWords, gaugeLength, nextTrialSetting, nextTrialWords } from '../words/index.ts';
import type { PaperBlock, TableBlock } from './paper-document.ts';

/** The four standard deviations of depth, and what each is the spread of. */
export const SPREAD_LEVELS = [
  { name: 'family', title: 'This kind of work in this shop', says: 'what a trial takes away' },
  { name: 'job', title: 'From job to job', says: 'batch, plate, day, height setting' },
  { name: 'pass', title: 'From pass to pass', says: 'what no reading before it tells' },
  { name: 'seam', title: 'Along the seam', says: 'the least and greatest of a long cut' },
] as const;

/** Sizes of electrodes that are learned together, as people name electrodes. */
const SIZES: Readonly<Record<string, Readonly<Record<UnitSystem, string>>>> = {
  small: { metric: 'to 8 mm', inch: 'to 5/16 in' },
  middle: { metric: '9.5 to 12.7 mm', inch: '3/8 to 1/2 in' },
  large: { metric: '16 mm and more', inch: '5/8 in and more' },
};

/** Standard deviations that a 90 % interval reaches to either side [-]. */
const HALF_90 = 1.645;

/** What a shop knows, as blocks: kinds of work, spreads, predictions and how they fared, what was weighed down or changed. */
export function knowledgeBlocks(report: KnowledgeReport, units: UnitSystem): PaperBlock[] {
  const { knowledge, shop, families, scores } = report;
  const { trials, jobs, date, id } = knowledge;
  const until = date === null ? '' : `, the latest of ${date}`;
  return [
    {
      kind: 'heading',
      level: 1,
      text: `What ${shop} knows: ${counted(trials, 'trial')} and ${counted(jobs, 'job')}${until} (${id})`,
    },
    ...(families.length === 0
      ? [paragraph('Nothing yet: plans rest on the published rows alone.')]
      : [familyTable(report, units), spreadTable(report)]),
    paragraph(`Predicted from the entries before, then measured: ${scoreWords(report)}`),
    ...(scores.predictions === 0 ? [] : [scoreTable(report, units)]),
    paragraph(driftWords(report, units)),
    { kind: 'list', tone: 'plain', items: changedWords(report) },
    paragraph('A prediction is a chance, never a promise; local codes and licensed practice govern.'),
  ];
}

/** Kinds of work the shop has learned about, and how well the depth of each is known. */
export function familyTable({ families }: KnowledgeReport, units: UnitSystem): TableBlock {
  const count = (title: string) => ({ title, align: 'end', weight: 0.7 }) as const;
  const words = (title: string, weight: number) => ({ title, align: 'start', weight }) as const;
  return {
    kind: 'table',
    caption: 'Kinds of work',
    small: true,
    columns: [
      words('Metal', 1.4),
      words('Position', 1),
      words('Electrode', 2),
      words('Torch', 1),
      count('Trials'),
      count('Jobs'),
      count('Readings'),
      { title: 'Depth known to (90 %)', align: 'end', weight: 1.1, strong: true },
    ],
    rows: families.map((family) => [
      family.metal.replaceAll('_', ' '),
      family.position.replaceAll('_', ' '),
      `${family.electrode_kind}, ${SIZES[family.size_band]?.[units] ?? family.size_band}`,
      family.torch ?? 'any',
      String(family.trials),
      String(family.jobs),
      String(family.readings),
      `± ${Math.ceil(100 * HALF_90 * family.doubt - 1e-6)} %`,
    ]),
  };
}

/** How depth scatters at each level, of the kind of work that is known best. */
export function spreadTable({ families }: Pick<KnowledgeReport, 'families'>): TableBlock {
  const levels = families[0]?.levels;
  return {
    kind: 'table',
    caption: 'Where depth scatters: standard deviation, with its 90 % interval',
    small: true,
    columns: [
      { title: 'Level', align: 'start', weight: 2 },
      { title: 'Spread', align: 'end', weight: 1, strong: true },
      { title: 'Interval', align: 'end', weight: 1.4 },
      { title: 'From', align: 'start', weight: 2 },
    ],
    rows: SPREAD_LEVELS.flatMap(({ name, title }) => {
      if (levels === undefined) return [];
      const { p05, p50, p95, from } = levels[name];
      return [[title, percent(p50), `${percent(p05)} to ${percent(p95)}`, from]];
    }),
  };
}

/** The trial that teaches most per minute: how it is cut, and what it is expected to give. */
export function nextTrialBlocks(trial: NextTrialReport, units: UnitSystem): PaperBlock[] {
  return [
    paragraph(nextTrialSetting(trial, units)),
    paragraph(nextTrialWords(trial, units)),
    {
      kind: 'paragraph',
      tone: 'small',
      text: 'Cut it on scrap of the same metal; local codes and licensed practice govern.',
    },
  ];
}

/** How predictions made before the cut fared, in words. */
export function scoreWords({ scores }: Pick<KnowledgeReport, 'scores'>): string {
  const { predictions, inside_90: inside, crps_mean: mean } = scores;
  if (predictions === 0) return 'nothing was measured yet.';
  const score = mean === null ? '' : `; mean score ${mean.toFixed(3)} of ln depth (CRPS, less is better)`;
  return `${inside} of ${predictions} inside the 90 % band${score}.`;
}

function scoreTable({ scores }: KnowledgeReport, units: UnitSystem): TableBlock {
  const length = (mm: number): string => gaugeLength(mm, units);
  return {
    kind: 'table',
    caption: 'Predictions, one by one',
    small: true,
    columns: [
      { title: 'Entry', align: 'start', weight: 1.4 },
      { title: 'Day', align: 'start', weight: 1 },
      { title: 'Predicted (90 %)', align: 'end', weight: 1.4 },
      { title: 'Measured', align: 'end', weight: 1, strong: true },
      { title: '', align: 'start', weight: 0.7 },
    ],
    rows: scores.entries.map(({ entry, date, predicted_mm: band, measured_mm: measured, inside }) => [
      entry,
      date,
      `${length(band.p05)} to ${length(band.p95)}`,
      length(measured),
      inside ? '' : 'outside',
    ]),
  };
}

/** What does not fit, was taken out, or was corrected; nothing of it is lost. */
function changedWords(report: KnowledgeReport): string[] {
  return [
    ...outlierWords(report),
    ...report.taken_out.map(({ entry, date, reason }) => `Taken out on ${date}: ${entry}. ${reason}`),
    ...report.corrected.map(({ entry, date, reason }) => `Corrected on ${date}: ${entry}. ${reason}`),
  ];
}

/** What does not fit the rest, each in a sentence. */
export function outlierWords({ outliers }: Pick<KnowledgeReport, 'outliers'>): string[] {
  return outliers.map(
    ({ entry, what, weight }) =>
      `${entry}, ${what}: does not fit the rest, is kept and weighs ${weight.toFixed(2)} of a good one.`,
  );
}

/** A spread of depth as a share of it. */
function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function paragraph(text: string): PaperBlock {
  return { kind: 'paragraph', tone: 'plain', text };
}
