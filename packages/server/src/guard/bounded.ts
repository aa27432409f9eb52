import type { Issue } from '@furrow/engine';

const ISSUES_MOST = 50;
const CHARACTERS_MOST = 400;

/** The first of many issues, each shortened: what is told of a text never grows beyond what a person reads. */
export function boundedIssues(issues: readonly Issue[]): Issue[] {
  return issues.slice(0, ISSUES_MOST).map(({ code, position, nearest, ...words }) => ({
    code,
    ...(position !== undefined && { position }),
    // What is put in place of something must be whole.
    ...(nearest !== undefined && nearest.length <= CHARACTERS_MOST && { nearest }),
    ...(Object.fromEntries(
      Object.entries(words).map(([name, text]) => [name, boundedText(text)]),
    ) as typeof words),
  }));
}

/** A sentence, cut where it is longer than a person reads. */
export function boundedText(text: string): string {
  if (text.length <= CHARACTERS_MOST) return text;
  // Not in the middle of a character of two halves.
  return `${text.slice(0, CHARACTERS_MOST).replace(/[\ud800-\udbff]$/u, '')} …`;
}
