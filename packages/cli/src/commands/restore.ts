import { randomUUID } from 'node:crypto';
import { openCompany, restoreCompany, StoreFailure } from '@furrow/store';
import { badInput, type Run } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { folderOf, originalsIn, type StoreOptions, storePlace } from '../frame/store-place.ts';

/** Restores a backup into a place that keeps nothing yet, and audits what came of it. */
export const run: Run<StoreOptions> = async ([file = ''], options) => {
  const now = (): Date => new Date();
  try {
    const place = storePlace(options);
    const report = await restoreCompany(file, place, originalsIn(folderOf(options)), now);
    const company = await openCompany(place, { now, newId: randomUUID });
    try {
      const { problems } = await company.audit();
      const count = Object.values(report.rows).reduce((sum, each) => sum + each, 0);
      const print = [
        `Restored ${count} rows and ${report.files} files of ${report.made_at}, Furrow ${report.program_version}.`,
        'Whoever was signed in signs in anew; one-time links are made anew.',
        problems.length === 0 ? 'The history agrees with what was restored.' : 'The history does not agree:',
      ].join('\n');
      return problems.length === 0
        ? { exit: EXIT.plan, print }
        : { exit: EXIT.refusal, print, problem: problems };
    } finally {
      await company.close();
    }
  } catch (error) {
    if (!(error instanceof StoreFailure)) throw error;
    return badInput([error.message]);
  }
};
