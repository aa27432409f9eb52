import { type DocumentPath, type Issue, type JobField, parseAmount } from '@furrow/engine';
import type { VNode } from 'preact';
import { useSheet } from '../index.ts';
import { acceptedText, besideField } from './issue-text.ts';

interface FieldIssueProps {
  readonly id: string;
  readonly issue: Issue | undefined;
  readonly field: JobField;
  readonly path: DocumentPath;
}

/** What is wrong with a field, what is accepted, and the nearest value to take over with one press. */
export function FieldIssue({ id, issue, field, path }: FieldIssueProps): VNode {
  const sheet = useSheet();
  const nearest = issue?.nearest;
  const usable =
    nearest !== undefined &&
    (field.kind !== undefined ? parseAmount(nearest, field.kind).ok : field.options?.includes(nearest));
  return (
    <div id={id} class="field-issue" hidden={issue === undefined}>
      {issue === undefined ? null : (
        <p>
          <span class="issue-mark" aria-hidden="true" />
          {besideField(issue)} {acceptedText(issue)}
          {issue.position === undefined ? null : (
            <span class="aside"> Line {issue.position.line} of the text.</span>
          )}
        </p>
      )}
      {usable ? (
        <button type="button" onClick={() => sheet.change([{ do: 'set', path, value: nearest }])}>
          Write {nearest}
        </button>
      ) : null}
    </div>
  );
}
