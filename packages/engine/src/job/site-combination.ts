import type { CombinationIssue } from '../document/index.ts';
import { amountOf, boundOf, say } from '../quantity/index.ts';
import type { Job } from './job.ts';

/** Finds fields of the site that are each fine but contradict each other. */
export function siteIssues({ site }: Job): CombinationIssue[] {
  const issues: CombinationIssue[] = [];
  const names = new Set<string>();
  for (const [index, { name, shift, tasks }] of (site.crews ?? []).entries()) {
    if (names.has(name)) {
      issues.push({
        at: ['site', 'crews', index, 'name'],
        message: `Two crews are called “${name}”; give each a name of its own.`,
        accepted: 'a name used once',
      });
    }
    names.add(name);
    const filled = tasks.reduce((sum, { time }) => sum + time, 0);
    if (filled > shift * (1 + 1e-9)) {
      const wanted = say`${boundOf(filled, 'time', 'least')}`;
      issues.push({
        at: ['site', 'crews', index, 'shift'],
        message: say`The tasks of the crew “${name}” take ${wanted}, longer than its shift of ${amountOf(shift, 'time')}.`,
        accepted: say`a shift of at least ${wanted}, or shorter tasks`,
        nearest: wanted,
      });
    }
  }
  return issues;
}
