import type { Issue } from '@furrow/engine';

/** How much there is to mend, in words. */
export function toMend(issues: readonly Issue[]): string {
  return `${issues.length === 1 ? 'one thing' : `${issues.length} things`} to mend`;
}
