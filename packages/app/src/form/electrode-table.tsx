import type { JobField } from '@furrow/engine';
import type { VNode } from 'preact';
import { entriesAt, writtenAt } from '../document/index.ts';
import { useBench, useBenchState } from '../state/index.ts';
import { ScrollBox } from '../table/index.ts';
import { FieldEntry, useFieldIssue } from './field-entry.tsx';
import { fieldId } from './field-id.ts';
import { FieldIssue } from './field-issue.tsx';

/** The list of electrodes in the job file. */
const LIST = ['kit', 'electrodes'];
/** An electrode to begin with; the person changes what differs. */
const NEW_ELECTRODE = { diameter: '1/2 in', count: 1 };

/** The electrodes in stock: a column each, so that their numbers stand side by side. */
export function ElectrodeTable({ fields }: { readonly fields: readonly JobField[] }): VNode {
  const bench = useBench();
  const count = useBenchState((state) => entriesAt(state.readable, LIST));
  const broken = useBenchState((state) => state.file.document.errors.length > 0);
  const columns = Array.from({ length: count }, (_, index) => index);
  const add = (): void => {
    bench.change([{ do: 'append', path: LIST, entry: NEW_ELECTRODE }]);
    requestAnimationFrame(() => document.getElementById(fieldId([...LIST, count, 'diameter']))?.focus());
  };
  return (
    <div class="electrodes" id={fieldId(LIST)} tabIndex={-1}>
      <ScrollBox name="Electrodes in stock">
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
                    aria-label={`Remove electrode ${index + 1}`}
                    disabled={broken || count < 2}
                    onClick={() => bench.change([{ do: 'remove', path: [...LIST, index] }])}
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
                  <span title={field.help}>{field.title}</span>
                  <span class="unseen" id={`${helpId(field)}`}>
                    {field.help}
                  </span>
                </th>
                {columns.map((index) => (
                  <ElectrodeCell key={index} field={field} index={index} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      {columns.map((index) => (
        <ElectrodeIssues key={index} fields={fields} index={index} />
      ))}
      <button type="button" disabled={broken} onClick={add}>
        Add electrode
      </button>
    </div>
  );
}

interface CellProps {
  readonly field: JobField;
  readonly index: number;
}

function ElectrodeCell({ field, index }: CellProps): VNode {
  const path = pathIn(field, index);
  const issue = useFieldIssue(path);
  return (
    <td class={issue === undefined ? '' : 'field-wrong'}>
      <FieldEntry
        field={field}
        path={path}
        name={`${field.title}, electrode ${index + 1}`}
        describedBy={`${helpId(field)} ${fieldId(path)}-issue`}
        invalid={issue !== undefined}
        brief
      />
    </td>
  );
}

function ElectrodeIssues({
  fields,
  index,
}: {
  readonly fields: readonly JobField[];
  readonly index: number;
}): VNode {
  const name = useBenchState((state) => writtenAt(state.readable, [...LIST, index, 'diameter']));
  return (
    <>
      {fields.map((field) => (
        <ElectrodeIssue key={field.path} field={field} index={index} name={name ?? ''} />
      ))}
    </>
  );
}

function ElectrodeIssue({ field, index, name }: CellProps & { readonly name: string }): VNode {
  const path = pathIn(field, index);
  const issue = useFieldIssue(path);
  return (
    <div hidden={issue === undefined}>
      <p class="issue-of">
        Electrode {index + 1} {name === '' ? '' : `(${name})`}, {field.title}
      </p>
      <FieldIssue id={`${fieldId(path)}-issue`} issue={issue} field={field} path={path} />
    </div>
  );
}

function pathIn(field: JobField, index: number): (string | number)[] {
  return [...LIST, index, field.path.split('.').at(-1) ?? ''];
}

function helpId(field: JobField): string {
  return `help-${field.path.replace(/[.*]+/gu, '-')}`;
}
