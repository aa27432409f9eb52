import type { VNode } from 'preact';
import { pathOf, patternOf } from '../document/index.ts';
import { useSheetState } from '../index.ts';
import { goToField } from './field-id.ts';
import { FixButton } from './field-issue.tsx';
import { acceptedText, namedIssue } from './issue-text.ts';

/** Mistakes told one by one. */
const SHOWN_MOST = 6;

interface IssueSummaryProps {
  /** Shows a line of the text view. */
  readonly onLine: (line: number) => void;
  /** Shows the form, where the fields are. */
  readonly onForm: () => void;
}

/** Everything that keeps the file from being used, each with a way to its field and to its line. */
export function IssueSummary({ onLine, onForm }: IssueSummaryProps): VNode | null {
  const issues = useSheetState((state) => state.issues);
  const refused = useSheetState((state) => state.editRefused);
  const fields = useSheetState((state) => state.file.fields);
  const broken = issues[0]?.code.endsWith('_SYNTAX') ?? false;
  const shown = issues.slice(0, broken ? 1 : SHOWN_MOST);
  const show = (path: string): void => {
    onForm();
    requestAnimationFrame(() => goToField(pathOf(path)));
  };
  if (issues.length === 0 && refused === undefined) return null;
  return (
    <section class="issue-summary" aria-labelledby="issues-title">
      <h3 id="issues-title">
        <span class="issue-mark" aria-hidden="true" />
        {issues.length === 0
          ? 'Not changed'
          : issues.length === 1
            ? 'One mistake'
            : `${issues.length} mistakes`}
      </h3>
      {refused === undefined ? null : <p>{refused}</p>}
      <ul>
        {shown.map((issue) => {
          const { position } = issue;
          const path = pathOf(issue.path);
          const field = fields.at(patternOf(path));
          return (
            <li key={`${issue.path} ${issue.message}`}>
              <p>
                {namedIssue(issue, field)} {acceptedText(issue)}
              </p>
              <p class="issue-ways">
                {field === undefined ? null : <FixButton issue={issue} field={field} path={path} />}
                {issue.path === '' ? null : (
                  <button type="button" class="quiet" onClick={() => show(issue.path)}>
                    go to the field
                  </button>
                )}
                {position === undefined ? null : (
                  <button type="button" class="quiet" onClick={() => onLine(position.line)}>
                    line {position.line} of the text
                  </button>
                )}
              </p>
            </li>
          );
        })}
      </ul>
      {shown.length < issues.length ? (
        <p>
          {issues.length - shown.length} more{broken ? ', which may follow from this one' : ''}
        </p>
      ) : null}
    </section>
  );
}
