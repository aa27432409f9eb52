import type { Issue, JobField } from '@furrow/engine';

/** An issue as it stands beside its field: the path in front is left out there. */
export function besideField({ message, path }: Issue): string {
  const start = `${path}: `;
  return message.startsWith(start) ? message.slice(start.length) : message;
}

/** What is accepted and what is nearest, where the message does not say so itself. */
export function acceptedText({ message, accepted, nearest }: Issue): string {
  const parts = [];
  if (accepted !== undefined && !message.includes(accepted)) parts.push(`Accepted: ${accepted}.`);
  if (nearest !== undefined && !message.includes(nearest)) parts.push(`Nearest: ${nearest}.`);
  return parts.join(' ');
}

/** An issue away from its field: by the label that the form has for it, where the message begins with its path. */
export function namedIssue(issue: Issue, field: JobField | undefined): string {
  const text = besideField(issue);
  return text === issue.message || field === undefined ? issue.message : `${field.title}: ${text}`;
}
