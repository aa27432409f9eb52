import type { DocumentPath, Issue, JobField, UnitSystem } from '@furrow/engine';
import { pathText } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { useUnits } from '../../ui/theme/index.ts';
import { writtenAt } from '../document/index.ts';
import { useSheet, useSheetState } from '../index.ts';
import { isBareNumber } from './box-unit.ts';
import { fieldId } from './field-id.ts';
import { entryOf, fallbackText, shownText } from './typed-value.ts';

interface FieldEntryProps {
  readonly field: JobField;
  readonly path: DocumentPath;
  /** Name for screen readers, where no label element stands beside the entry. */
  readonly name?: string;
  /** Ids of the texts that describe the entry. */
  readonly describedBy: string;
  readonly invalid: boolean;
  /** Whether there is little room for what stands in an empty entry. */
  readonly brief?: boolean;
}

/** The issue that belongs to a field, if there is one. */
export function useFieldIssue(path: DocumentPath): Issue | undefined {
  const at = pathText(path);
  return useSheetState((state) => state.issues.find((issue) => issue.path === at));
}

/** The entry of one field: a text as people write it, a longer text, or a choice. */
export function FieldEntry({
  field,
  path,
  name,
  describedBy,
  invalid,
  brief = false,
}: FieldEntryProps): VNode {
  const sheet = useSheet();
  const written = useSheetState((state) => writtenAt(state.readable, path));
  const broken = useSheetState((state) => state.file.broken);
  const [typed, setTyped] = useState<string>();
  const units = useUnits();
  const entry = entryOf(field, units);
  const { unit } = entry;
  const enter = (text: string): void => {
    setTyped(text);
    const value = entry.fileValue(text);
    if ((value === undefined ? undefined : String(value)) === written) return;
    sheet.change([value === undefined ? { do: 'remove', path } : { do: 'set', path, value }]);
  };
  const common = {
    id: fieldId(path),
    'aria-describedby': describedBy,
    'aria-invalid': invalid,
    'aria-required': !field.optional,
    ...(name === undefined ? {} : { 'aria-label': name }),
  };
  if (field.entry === 'choice') {
    return (
      <select
        {...common}
        value={written ?? ''}
        disabled={broken}
        onChange={(event) => enter(event.currentTarget.value)}
      >
        {field.optional || written === undefined ? (
          <option value="">{emptyText(field, brief, units)}</option>
        ) : null}
        {written === undefined || field.options?.includes(written) ? null : (
          <option value={written}>{written}</option>
        )}
        {field.options?.map((option) => (
          <option key={option} value={option}>
            {option.replaceAll('_', ' ')}
          </option>
        ))}
      </select>
    );
  }
  const shown = shownText(typed, written, entry);
  const onInput = (event: { readonly currentTarget: { readonly value: string } }): void =>
    enter(event.currentTarget.value);
  const text = {
    ...common,
    value: shown,
    placeholder: emptyText(field, brief, units),
    autocomplete: 'off',
    readOnly: broken,
    onInput,
  } as const;
  if (field.path === 'note') return <textarea {...text} rows={3} />;
  const input = <input {...text} type="text" spellcheck={field.entry === 'text'} />;
  if (unit === undefined) return input;
  return (
    <span class="entry-with-unit">
      {input}
      {isBareNumber(shown) ? <span class="entry-unit">{unit}</span> : null}
    </span>
  );
}

/** What an empty field stands for. */
function emptyText(field: JobField, brief: boolean, units: UnitSystem): string {
  if (field.fallback !== undefined) {
    const text = fallbackText(field, units);
    if (text === 'no price') return text;
    return brief ? `(${text})` : `default: ${text}`;
  }
  if (!field.optional) return '';
  if (brief) return '–';
  return field.path.startsWith('locks.') ? 'free' : 'not stated';
}
