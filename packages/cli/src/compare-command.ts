import { type DocumentDifference, jobDifference, kitDifference, type UnitSystem } from '@furrow/engine';
import { EXIT } from './exit-code.ts';
import { type Loaded, loadJob, loadKit } from './load-document.ts';
import type { Streams } from './streams.ts';

/** Options of `furrow compare`. */
export interface CompareOptions {
  /** Whether kits are compared in place of jobs. */
  readonly kits: boolean;
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** Tells in words in what two revisions of a job, or of a kit, differ. */
export async function compareCommand(
  before: string,
  after: string,
  options: CompareOptions,
  streams: Streams,
): Promise<number> {
  if (before === '-' && after === '-') {
    streams.problem(['Standard input holds one file: name the other by its path.']);
    return EXIT.badInput;
  }
  const { units } = options;
  const compared = options.kits
    ? await compare(before, after, loadKit, (one, two) => kitDifference(one, two, units))
    : await compare(before, after, loadJob, (one, two) => jobDifference(one, two, units));
  if (!compared.ok) {
    streams.problem(compared.lines);
    return EXIT.badInput;
  }
  const { revisions, differences } = compared;
  if (options.json) {
    streams.print(JSON.stringify({ before: revisions[0], after: revisions[1], differences }, null, 2));
  } else if (differences.length === 0) {
    streams.print(`Both are revision ${revisions[0].slice(0, 12)}: nothing differs but the writing.`);
  } else {
    streams.print(
      [
        `Revision ${revisions[0].slice(0, 12)} before, ${revisions[1].slice(0, 12)} now:`,
        ...differences.map(({ words }) => `  - ${words}`),
      ].join('\n'),
    );
  }
  return EXIT.plan;
}

type Compared =
  | { readonly ok: false; readonly lines: readonly string[] }
  | {
      readonly ok: true;
      readonly revisions: readonly [string, string];
      readonly differences: readonly DocumentDifference[];
    };

async function compare<Read extends { readonly revision: string }>(
  before: string,
  after: string,
  load: (file: string) => Promise<Loaded<Read>>,
  difference: (one: Read, two: Read) => readonly DocumentDifference[],
): Promise<Compared> {
  const [one, two] = [await load(before), await load(after)];
  if (!one.ok || !two.ok)
    return { ok: false, lines: [one, two].flatMap((each) => (each.ok ? [] : each.lines)) };
  return {
    ok: true,
    revisions: [one.read.revision, two.read.revision],
    differences: difference(one.read, two.read),
  };
}
