import { type DocumentPath, formatAmount, type JobField, parseAmount } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { useUnits } from '../../ui/theme/index.ts';
import { writtenAt } from '../document/index.ts';
import { useSheetState } from '../index.ts';
import { FieldEntry, useFieldIssue } from './field-entry.tsx';
import { fieldId } from './field-id.ts';
import { FieldIssue } from './field-issue.tsx';
import { shownRate } from './shown-rate.ts';

interface FieldRowProps {
  readonly field: JobField;
  readonly path: DocumentPath;
}

/** One field of the form: label, entry, how the amount was read, help, and what is wrong with it. */
export function FieldRow({ field, path }: FieldRowProps): VNode {
  const issue = useFieldIssue(path);
  const [open, setOpen] = useState(false);
  const id = fieldId(path);
  const describedBy = `${id}-help ${id}-issue`;
  return (
    <div class={`field field-${field.entry}${issue === undefined ? '' : ' field-wrong'}`}>
      <label for={id}>
        {field.title}
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
        aria-label={`Help on ${field.title}`}
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

/** An amount in the shop's units, where it was written otherwise; what stands in for a rate too, whose unit is in its name. */
function ReadAs({ field, path }: FieldRowProps): VNode | null {
  const units = useUnits();
  const written = useSheetState((state) => writtenAt(state.readable, path));
  if (field.kind === undefined) {
    const text = shownRate(field, written ?? String(field.fallback ?? ''), units);
    return text === undefined ? null : <span class="read-as">= {text}</span>;
  }
  if (written === undefined) return null;
  const read = parseAmount(written, field.kind);
  if (!read.ok) return null;
  const text = formatAmount(read.value, field.kind, units);
  return sameAmount(text, written) ? null : <span class="read-as">= {text}</span>;
}

/** Whether two amounts say the same number in the same unit: 12 mm and 12.0 mm. */
function sameAmount(one: string, other: string): boolean {
  const plain = (text: string): string => {
    const [, number = '', unit = ''] = /^([\d.,/ ]+)(.*)$/u.exec(text.replace('°', ' deg')) ?? [];
    const value = Number(number.trim().replace(',', '.'));
    return `${Number.isNaN(value) ? number.trim() : value} ${unit.trim()}`;
  };
  return plain(one) === plain(other);
}
