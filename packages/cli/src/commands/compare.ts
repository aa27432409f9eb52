import { type DocumentDifference, jobDifference, kitDifference, type UnitSystem } from '@furrow/engine';
import { badInput, type Run } from '../frame/command.ts';
import { type Loaded, loadJob, loadKit } from '../frame/load-document.ts';

interface CompareOptions {
  /** Whether kits are compared in place of jobs. */
  readonly kits: boolean;
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** Tells in words in what two revisions of a job, or of a kit, differ. */
export const run: Run<CompareOptions> = async ([before = '-', after = '-'], { kits, json, units }) => {
  if (before === '-' && after === '-') {
    return badInput(['Standard input holds one file: name the other by its path.']);
  }
  const compared = kits
    ? await compare(before, after, loadKit, (one, two) => kitDifference(one, two, units))
    : await compare(before, after, loadJob, (one, two) => jobDifference(one, two, units));
  if (!compared.ok) return badInput(compared.lines);
  const { revisions, differences } = compared;
  if (json) {
    const result = { before: revisions[0], after: revisions[1], differences };
    return { exit: 0, print: JSON.stringify(result, null, 2) };
  }
  const [one, two] = revisions.map((revision) => revision.slice(0, 12));
  const lines =
    differences.length === 0
      ? [`Both are revision ${one}: nothing differs but the writing.`]
      : [`Revision ${one} before, ${two} now:`, ...differences.map(({ words }) => `  - ${words}`)];
  return { exit: 0, print: lines.join('\n') };
};

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
