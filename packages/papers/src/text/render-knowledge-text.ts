import { formatStated, type KnowledgeReport, type UnitSystem } from '@furrow/engine';
import { driftWords } from '../words/index.ts';
import { plainLine } from './plain-line.ts';
import { type TextColumn, textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** Letters per line. */
const WIDTH = 100;

const start = (title: string): TextColumn => ({ title, align: 'start' });
const end = (title: string): TextColumn => ({ title, align: 'end' });

/** Writes what a shop knows for the terminal. */
export function renderKnowledgeText(report: KnowledgeReport, units: UnitSystem): string {
  const { knowledge, scores } = report;
  const lines = [
    ...wrapped(
      plainLine(
        `What ${report.shop} knows: ${counted(knowledge.trials, 'trial')} and ${counted(knowledge.jobs, 'job')}${knowledge.date === null ? '' : `, the latest of ${knowledge.date}`} (${knowledge.id})`,
      ),
      WIDTH,
    ),
    '',
    ...(report.families.length === 0
      ? ['Nothing yet: plans rest on the published rows alone.']
      : familyLines(report)),
    '',
    'Predicted from the entries before, against what was measured',
    ...(scores.predictions === 0
      ? ['None yet.']
      : [
          `${scores.inside_90} of ${scores.predictions} inside the 90 % band; mean score ${scores.crps_mean!.toFixed(4)} of ln depth.`,
          ...textTable(
            [start('Entry'), start('Day'), end('Predicted'), end('Measured'), start('')],
            scores.entries.map(({ entry, date, predicted_mm: band, measured_mm: measured, inside }) => [
              entry,
              date,
              `${length(band.p05, units)} to ${length(band.p95, units)}`,
              length(measured, units),
              inside ? '' : 'outside',
            ]),
            WIDTH,
          ),
        ]),
    '',
    ...wrapped(driftWords(report, units), WIDTH),
    ...report.outliers.flatMap(({ entry, what, weight }) =>
      wrapped(plainLine(`Weighed down to ${weight.toFixed(2)}: ${entry}, ${what}. It is kept.`), WIDTH),
    ),
    ...report.taken_out.flatMap(({ entry, date, reason }) =>
      wrapped(plainLine(`Taken out on ${date}: ${entry}. ${reason}`), WIDTH),
    ),
    ...report.corrected.flatMap(({ entry, date, reason }) =>
      wrapped(plainLine(`Corrected on ${date}: ${entry}. ${reason}`), WIDTH),
    ),
    '',
    ...wrapped('A prediction is a chance, never a promise; local codes and licensed practice govern.', WIDTH),
  ];
  return `${lines.join('\n')}\n`;
}

function familyLines({ families }: KnowledgeReport): string[] {
  const [{ levels }] = families as [KnowledgeReport['families'][number]];
  return [
    ...textTable(
      [start('Family'), end('Trials'), end('Jobs'), end('Readings'), end('Level known to')],
      families.map(({ family, trials, jobs, readings, doubt }) => [
        family,
        String(trials),
        String(jobs),
        String(readings),
        percent(doubt),
      ]),
      WIDTH,
    ),
    '',
    'Spread of depth (standard deviation), with its 90 % interval',
    ...textTable(
      [start('Level'), end('Spread'), end('Interval'), start('From')],
      (['family', 'job', 'pass', 'seam'] as const).map((name) => [
        name === 'seam' ? 'along the seam' : name,
        percent(levels[name].p50),
        `${percent(levels[name].p05)} to ${percent(levels[name].p95)}`,
        levels[name].from,
      ]),
      WIDTH,
    ),
  ];
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function length(mm: number, units: UnitSystem): string {
  return formatStated(mm, 'mm', units, 'length');
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
