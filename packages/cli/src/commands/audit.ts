import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type AuditReport, COMPANY, type HistoryEnd, openCompany, StoreFailure } from '@furrow/store';
import { badInput, type Run } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { type StoreOptions, storePlace } from '../frame/store-place.ts';

interface AuditOptions extends StoreOptions {
  /** File with what an earlier audit printed. */
  readonly since?: string;
  readonly json: boolean;
}

/** Problems that are told of at most, unless all are asked for as JSON [-]. */
const SHOWN = 50;

/** Holds the histories to their chains and what is kept to the histories; refused where anything does not agree. */
export const run: Run<AuditOptions> = async (_args, options) => {
  try {
    const earlier = options.since === undefined ? [] : endsOf(options.since);
    if (typeof earlier === 'string') return badInput([earlier]);
    const company = await openCompany(storePlace(options), { now: () => new Date(), newId: randomUUID });
    try {
      const report = await company.audit(earlier);
      const exit = report.problems.length === 0 ? EXIT.plan : EXIT.refusal;
      return { exit, print: options.json ? JSON.stringify(report, undefined, 2) : words(report) };
    } finally {
      await company.close();
    }
  } catch (error) {
    if (!(error instanceof StoreFailure)) throw error;
    return badInput([error.message]);
  }
};

/** Where the histories ended at an earlier audit, or why that cannot be read. */
function endsOf(file: string): readonly HistoryEnd[] | string {
  try {
    const { histories } = JSON.parse(readFileSync(file, 'utf8')) as Partial<AuditReport>;
    const known = Array.isArray(histories) ? histories : [];
    const whole = known.every(
      ({ shop, entries, hash }) =>
        typeof shop === 'string' && Number.isInteger(entries) && /^[0-9a-f]{64}$/u.test(hash),
    );
    if (known.length > 0 && whole) return known;
    return `${file} is not what “furrow audit --json” prints: its list of histories is missing or not whole.`;
  } catch (error) {
    return `${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`;
  }
}

function words({ histories, held, problems }: AuditReport): string {
  const ends = histories.map(
    ({ shop, entries, hash }) =>
      `  ${shop === COMPANY ? 'the company' : shop}: ${entries} entries, the last ${hash}`,
  );
  const verdict =
    problems.length === 0
      ? `Everything agrees: each history is one chain, and the ${held} things kept are what it says.`
      : `${problems.length === 1 ? 'One thing does' : `${problems.length} things do`} not agree:`;
  const shown = problems.slice(0, SHOWN).map((problem) => `  ${problem}`);
  const more = problems.length > SHOWN ? [`  and ${problems.length - SHOWN} more; --json lists all`] : [];
  return [verdict, ...shown, ...more, 'Histories end here; keep this elsewhere:', ...ends].join('\n');
}
