import { type DocumentPath, type Issue, type JobField, parseAmount, type UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';
import { useSheet } from '../index.ts';
import { boxUnit, isBareNumber } from './box-unit.ts';
import { acceptedText, besideField } from './issue-text.ts';

interface FieldIssueProps {
  readonly id: string;
  readonly issue: Issue | undefined;
  readonly field: JobField;
  readonly path: DocumentPath;
}

/** What is wrong with a field, what is accepted, and the nearest value to take over with one press. */
export function FieldIssue({ id, issue, field, path }: FieldIssueProps): VNode {
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
      {issue === undefined ? null : <FixButton issue={issue} field={field} path={path} />}
    </div>
  );
}

interface FixButtonProps {
  readonly issue: Issue;
  readonly field: JobField;
  readonly path: DocumentPath;
}

/** Takes the nearest value over, where it is one that the field accepts; a number alone in the unit of its box. */
export function FixButton({ issue, field, path }: FixButtonProps): VNode | null {
  const sheet = useSheet();
  const nearest = nearestOf(issue, field, useUnits());
  const usable =
    nearest !== undefined &&
    (field.kind !== undefined ? parseAmount(nearest, field.kind).ok : field.options?.includes(nearest));
  return usable ? (
    <button type="button" onClick={() => sheet.change([{ do: 'set', path, value: nearest }])}>
      Write {nearest}
    </button>
  ) : null;
}

/** What is most likely meant, to a reader in these units. */
function nearestOf({ code, read, nearest }: Issue, field: JobField, units: UnitSystem): string | undefined {
  const unit = boxUnit(field, units);
  const isBare =
    code === 'AMOUNT_AMBIGUOUS' && unit !== undefined && read !== undefined && isBareNumber(read);
  return isBare ? `${read.trim()} ${unit}` : nearest;
}
