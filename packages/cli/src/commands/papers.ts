import { join } from 'node:path';
import { PROGRAM_VERSION } from '@furrow/contract';
import { gaugeOfSurvey, type UnitSystem } from '@furrow/engine';
import { badInput } from '../frame/command.ts';
import { loadGaugeOf } from '../frame/load-document.ts';
import { exitOf, type JobOptions, onJob, printed } from '../frame/on-job.ts';
import { whyUnwritable } from '../output/disk.ts';
import { keptFiles, type Superseded, supersededIn } from '../output/earlier-papers.ts';
import { holdSignals } from '../output/hold-signals.ts';
import { type PaperFiles, paperFiles } from '../output/paper-files.ts';
import { InTheWay, recoverFolder, replacePapers } from '../output/paper-folder.ts';
import { PAPER_LIST } from '../output/paper-list.ts';

interface PapersOptions extends JobOptions {
  /** Folder to write into; made if it is not there. */
  readonly output: string;
  readonly paper: 'a4' | 'letter';
  readonly json: boolean;
  /** Gauge file, whose study tells the uncertainty of a reading; that of the readings file if left out. */
  readonly gauge?: string;
}

/** Writes all papers and drawings of a job into a folder, and tells what they supersede there. */
export const run = onJob<PapersOptions>(
  async (
    { job, kit, knowledge, readings, texts },
    answer,
    { units, paper, output, json, gauge: named, readings: record },
  ) => {
    const gauge = await loadGaugeOf(named, record === undefined ? undefined : { file: record, readings });
    if (gauge?.ok === false) return badInput(gauge.lines);
    try {
      const restored = holdSignals(() => recoverFolder(output));
      const superseded = await supersededIn(output, job, kit, units);
      const measured =
        texts.readings === undefined
          ? undefined
          : [{ name: 'readings', bytes: new TextEncoder().encode(texts.readings) }];
      const subject = {
        ...{ read: job, answer, kit, knowledge, readings, measured },
        gauge: gauge === undefined ? undefined : gaugeOfSurvey(gauge.read),
      };
      const made = await paperFiles(subject, { units, paper });
      const kept = keptFiles(texts);
      const files = [...made.files, ...kept];
      const { removed } = holdSignals(() => replacePapers(output, files, PROGRAM_VERSION));
      const listed = { ...answer.inputs, units, paper, output, made, kept, removed, restored, superseded };
      return { exit: exitOf(answer), print: printed(json, asJson(listed), () => inWords(listed)) };
    } catch (error) {
      return badInput(whyNotWritten(output, error));
    }
  },
);

/** Why the folder is as it was; throws an error that is not the disk’s. */
function whyNotWritten(output: string, error: unknown): readonly string[] {
  if (error instanceof InTheWay) {
    return [
      `${output}: nothing was written or removed, because of what lies there:`,
      ...error.lines.map((line) => `  ${line}`),
      'Name another folder, or move these away first.',
    ];
  }
  const why = whyUnwritable(error);
  if (why === undefined) throw error;
  return [`${output}: the papers could not be written: ${why} What lay there is as it was.`];
}

interface Listed {
  readonly revision: string;
  readonly kit_revision?: string;
  readonly program_version: string;
  readonly units: UnitSystem;
  readonly paper: 'a4' | 'letter';
  readonly output: string;
  readonly made: PaperFiles;
  /** Copies of what the papers were made from. */
  readonly kept: readonly { readonly file: string }[];
  /** Papers of before that there are none of now. */
  readonly removed: readonly string[];
  /** Whether an earlier run had been cut short here. */
  readonly restored: boolean;
  readonly superseded: Superseded | undefined;
}

function asJson({
  revision,
  kit_revision,
  program_version,
  units,
  paper,
  output,
  made,
  kept,
  removed,
  superseded,
}: Listed): object {
  return {
    revision,
    kit_revision: kit_revision ?? null,
    program_version,
    units,
    paper,
    folder: output,
    files: made.files.map(({ file, title, pages, bytes, sha256 }) => ({
      file,
      title,
      pages,
      bytes: bytes.length,
      sha256,
    })),
    left_out: made.left_out,
    list: PAPER_LIST,
    kept: kept.map(({ file }) => file),
    removed,
    superseded: superseded ?? null,
  };
}

function inWords({ revision, output, made, kept, removed, restored, superseded }: Listed): string {
  return [
    ...(restored ? ['An earlier run was cut short here: the papers of before were put back first.'] : []),
    ...made.files.map(
      ({ file, pages }) =>
        `Wrote ${join(output, file)}${pages === null ? '' : `, ${pages} page${pages === 1 ? '' : 's'}`}`,
    ),
    ...made.left_out.map(({ paper, why }) => `Left out ${paper}: ${why}.`),
    ...removed.map((file) => `Removed ${join(output, file)}, of the papers before.`),
    `Kept what they were made from as ${kept.map(({ file }) => file).join(' and ')}; ${PAPER_LIST} lists what is Furrow’s there.`,
    ...(superseded === undefined
      ? []
      : [
          `What was printed from this folder at revision ${superseded.revision.slice(0, 12)} is superseded:`,
          ...superseded.differences.map(({ words }) => `  - ${words}`),
        ]),
    `Revision ${revision.slice(0, 12)}.`,
  ].join('\n');
}
