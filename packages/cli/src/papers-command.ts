import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { PROGRAM_VERSION } from '@furrow/contract';
import { answerJob, type UnitSystem } from '@furrow/engine';
import { KEPT, type Superseded, supersededIn } from './earlier-papers.ts';
import { EXIT } from './exit-code.ts';
import { loadJobWithKit, loadReadings } from './load-document.ts';
import { type PaperFiles, paperFiles } from './paper-files.ts';
import type { Streams } from './streams.ts';
import { writeWhole } from './write-file.ts';

/** Options of `furrow papers`. */
export interface PapersOptions {
  /** Folder to write into; made if it is not there. */
  readonly output: string;
  readonly units: UnitSystem;
  readonly kit: string | undefined;
  readonly paper: 'a4' | 'letter';
  /** Readings file for run record and groove report; empty ones if left out. */
  readonly readings: string | undefined;
  readonly json: boolean;
}

/** Writes all papers and drawings of a job into a folder, and tells what they supersede there. */
export async function papersCommand(file: string, options: PapersOptions, streams: Streams): Promise<number> {
  if (options.readings === '-') {
    streams.problem(['Standard input is for the job: name the readings file by its path.']);
    return EXIT.badInput;
  }
  const loaded = await loadJobWithKit(file, options.kit);
  const readings = options.readings === undefined ? undefined : await loadReadings(options.readings);
  const lines = [loaded, readings].flatMap((each) => (each === undefined || each.ok ? [] : each.lines));
  if (!loaded.ok || (readings !== undefined && !readings.ok)) {
    streams.problem(lines);
    return EXIT.badInput;
  }
  const { job, kit, texts } = loaded.read;
  const { units, paper, output } = options;
  const answer = answerJob(job, PROGRAM_VERSION, kit, units);
  try {
    const superseded = await supersededIn(output, job, kit, units);
    const made = await paperFiles({ read: job, answer, kit, readings: readings?.read }, { units, paper });
    await mkdir(output, { recursive: true });
    for (const { file: name, bytes } of made.files) await writeWhole(join(output, name), bytes);
    // papers of an earlier revision that there are none of now must not stay among the new ones
    for (const { paper: gone } of made.left_out) {
      for (const ending of ['pdf', 'svg', 'dxf'])
        await rm(join(output, `${gone}.${ending}`), { force: true });
    }
    await keep(output, KEPT.job, texts.job);
    await keep(output, KEPT.kit, texts.kit);
    const listed = { ...answer.inputs, units, paper, output, made, superseded };
    streams.print(options.json ? JSON.stringify(asJson(listed), null, 2) : inWords(listed));
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    streams.problem([`${output}: the papers could not be written: ${message}`]);
    return EXIT.badInput;
  }
  return answer.plan === undefined ? EXIT.refusal : EXIT.plan;
}

/** Keeps what the papers were made from beside them, so that a later change can be told. */
async function keep(folder: string, name: string, text: string | undefined): Promise<void> {
  if (text === undefined) await rm(join(folder, name), { force: true });
  else await writeWhole(join(folder, name), new TextEncoder().encode(text));
}

interface Listed {
  readonly revision: string;
  readonly kit_revision?: string;
  readonly program_version: string;
  readonly units: UnitSystem;
  readonly paper: 'a4' | 'letter';
  readonly output: string;
  readonly made: PaperFiles;
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
    superseded: superseded ?? null,
  };
}

function inWords({ revision, output, made, superseded }: Listed): string {
  return [
    ...made.files.map(
      ({ file, pages }) =>
        `Wrote ${join(output, file)}${pages === null ? '' : `, ${pages} page${pages === 1 ? '' : 's'}`}`,
    ),
    ...made.left_out.map(({ paper, why }) => `Left out ${paper}: ${why}.`),
    ...(superseded === undefined
      ? []
      : [
          `What was printed from this folder at revision ${superseded.revision.slice(0, 12)} is superseded:`,
          ...superseded.differences.map(({ words }) => `  - ${words}`),
        ]),
    `Revision ${revision.slice(0, 12)}.`,
  ].join('\n');
}
