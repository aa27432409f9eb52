import type { DocumentPath, JobField } from '@furrow/engine';
import { defaultTitle } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { useUnits } from '../../ui/theme/index.ts';
import { writtenAt } from '../document/index.ts';
import { useSheetState } from '../index.ts';
import { FieldEntry, useFieldIssue } from './field-entry.tsx';
import { fieldId } from './field-id.ts';
import { FieldIssue } from './field-issue.tsx';
import { rateBox } from './rate-box.ts';
import { readAsText } from './read-as.ts';

interface FieldRowProps {
  readonly field: JobField;
  readonly path: DocumentPath;
}

/** One field of the form: label, entry, how the amount was read, help, and what is wrong with it. */
export function FieldRow({ field, path }: FieldRowProps): VNode {
  const issue = useFieldIssue(path);
  const [open, setOpen] = useState(false);
  const title = defaultTitle(field.path, [field], useUnits());
  const id = fieldId(path);
  const describedBy = `${id}-help ${id}-issue`;
  return (
    <div class={`field field-${field.entry}${issue === undefined ? '' : ' field-wrong'}`}>
      <label for={id}>
        {title}
        {field.optional ? null : (
          <span class="required" aria-hidden="true">
            {' '}
            *
          </span>
        )}
      </label>
      <div class="field-entry">
        <FieldEntry field={field} path={path} describedBy={describedBy} invalid={issue !== undefined} />
        <ReadAs field={field} path={path} />
      </div>
      <button
        type="button"
        class="help-button"
        aria-label={`Help on ${title}`}
        aria-expanded={open}
        aria-controls={`${id}-help`}
        onClick={() => setOpen(!open)}
      >
        ?
      </button>
      <p class="field-help" id={`${id}-help`} hidden={!open}>
        {field.help} <code>{field.path}</code>
      </p>
      <FieldIssue id={`${id}-issue`} issue={issue} field={field} path={path} />
    </div>
  );
}

/** An amount in the shop's units, where it was written otherwise; a rate, which the box has in the shop's, as the file has it. */
function ReadAs({ field, path }: FieldRowProps): VNode | null {
  const units = useUnits();
  const written = useSheetState((state) => writtenAt(state.readable, path));
  const inFile = rateBox(field, units)?.inFile(written ?? String(field.fallback ?? ''));
  const text = inFile ?? readAsText(field, written, units);
  return text === undefined ? null : (
    <span class="read-as">
      = {text}
      {inFile === undefined ? '' : ' in the file'}
    </span>
  );
}
