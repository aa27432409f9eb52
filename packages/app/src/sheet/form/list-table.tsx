import { type DocumentPath, type JobField, pathText } from '@furrow/engine';
import { defaultTitle } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { ScrollBox } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { entriesAt, patternOf, writtenAt } from '../document/index.ts';
import { useSheet, useSheetState } from '../index.ts';
import { FieldEntry, useFieldIssue } from './field-entry.tsx';
import { fieldId } from './field-id.ts';
import { FieldIssue } from './field-issue.tsx';
import { freshEntry, type ListWords, listWords } from './list-words.ts';

interface ListTableProps {
  /** Where the list stands in the file. */
  readonly list: DocumentPath;
  readonly fields: readonly JobField[];
}

/** A list of entries that hold fields only: a column each, so that their numbers stand side by side. */
export function ListTable({ list, fields }: ListTableProps): VNode {
  const sheet = useSheet();
  const count = useSheetState((state) => entriesAt(state.readable, list));
  const broken = useSheetState((state) => state.file.broken);
  const words = listWords(patternOf(list));
  const units = useUnits();
  const titleOf = (field: JobField): string => defaultTitle(field.path, [field], units);
  const columns = Array.from({ length: count }, (_, index) => index);
  const add = (): void => {
    const named = fields.some((field) => nameOf(field) === 'name');
    sheet.change([{ do: 'append', path: list, entry: freshEntry(words, count, named) }]);
    const first = fields[0];
    if (first === undefined) return;
    requestAnimationFrame(() => document.getElementById(fieldId([...list, count, nameOf(first)]))?.focus());
  };
  const remove = (index: number): void =>
    sheet.change([{ do: 'remove', path: count === 1 ? list : [...list, index] }]);
  return (
    <div class="electrodes" id={fieldId(list)} tabIndex={-1}>
      {count === 0 ? null : (
        <ScrollBox name={words.all}>
          <table class="electrode-table">
            <thead>
              <tr>
                <td />
                {columns.map((index) => (
                  <th key={index} scope="col">
                    <span>no. {index + 1}</span>
                    <button
                      type="button"
                      class="quiet"
                      aria-label={`Remove ${words.one} ${index + 1}`}
                      disabled={broken || count <= words.least}
                      onClick={() => remove(index)}
                    >
                      remove
                    </button>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {fields.map((field) => (
                <tr key={field.path}>
                  <th scope="row">
                    <span title={field.help}>{titleOf(field)}</span>
                    <span class="unseen" id={helpId(list, field)}>
                      {field.help}
                    </span>
                  </th>
                  {columns.map((index) => (
                    <Cell key={index} list={list} field={field} index={index} words={words} />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollBox>
      )}
      {columns.map((index) => (
        <EntryIssues key={index} list={list} fields={fields} index={index} words={words} />
      ))}
      <button type="button" disabled={broken} onClick={add}>
        Add {words.one}
      </button>
    </div>
  );
}

interface CellProps {
  readonly list: DocumentPath;
  readonly field: JobField;
  readonly index: number;
  readonly words: ListWords;
}

function Cell({ list, field, index, words }: CellProps): VNode {
  const path = [...list, index, nameOf(field)];
  const issue = useFieldIssue(path);
  return (
    <td class={issue === undefined ? '' : 'field-wrong'}>
      <FieldEntry
        field={field}
        path={path}
        name={`${field.title}, ${words.one} ${index + 1}`}
        describedBy={`${helpId(list, field)} ${fieldId(path)}-issue`}
        invalid={issue !== undefined}
        brief
      />
    </td>
  );
}

interface EntryIssuesProps {
  readonly list: DocumentPath;
  readonly fields: readonly JobField[];
  readonly index: number;
  readonly words: ListWords;
}

function EntryIssues({ list, fields, index, words }: EntryIssuesProps): VNode {
  const first = fields[0];
  const name = useSheetState((state) =>
    first === undefined ? undefined : writtenAt(state.readable, [...list, index, nameOf(first)]),
  );
  return (
    <>
      {fields.map((field) => (
        <EntryIssue
          key={field.path}
          list={list}
          field={field}
          index={index}
          words={words}
          name={name ?? ''}
        />
      ))}
    </>
  );
}

function EntryIssue({ list, field, index, words, name }: CellProps & { readonly name: string }): VNode {
  const path = [...list, index, nameOf(field)];
  const issue = useFieldIssue(path);
  return (
    <div hidden={issue === undefined}>
      <p class="issue-of">
        {words.one.charAt(0).toUpperCase()}
        {words.one.slice(1)} {index + 1} {name === '' ? '' : `(${name})`}, {field.title}
      </p>
      <FieldIssue id={`${fieldId(path)}-issue`} issue={issue} field={field} path={path} />
    </div>
  );
}

function nameOf(field: JobField): string {
  return field.path.split('.').at(-1) ?? '';
}

function helpId(list: DocumentPath, field: JobField): string {
  return `help-${pathText([...list, nameOf(field)]).replace(/[.[\]]+/gu, '-')}`;
}
