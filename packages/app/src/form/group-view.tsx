import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { useBenchState } from '../state/index.ts';
import { ElectrodeTable } from './electrode-table.tsx';
import { fieldId } from './field-id.ts';
import { FieldRow } from './field-row.tsx';
import { type FormEntry, type FormGroup, fieldsIn } from './form-group.ts';

/** Groups that are folded at first: they are filled in once for a shop, or not at all. */
const FOLDED = new Set(['rates', 'plan', 'locks', 'plate.composition']);

/** A group of the form that can be folded. */
export function GroupView({
  group,
  inner = false,
}: {
  readonly group: FormGroup;
  readonly inner?: boolean;
}): VNode {
  const wrong = useBenchState(
    (state) =>
      group.path !== '' &&
      state.issues.some(
        ({ path }) =>
          path === group.path || path.startsWith(`${group.path}.`) || path.startsWith(`${group.path}[`),
      ),
  );
  // once opened for a mistake it stays open: it must not fold under the hands of who mends it
  const opened = useRef(false);
  opened.current ||= wrong;
  const path = group.path === '' ? [] : group.path.split('.');
  const Heading = inner ? 'h4' : 'h3';
  return (
    <details class={`group${inner ? ' group-inner' : ''}`} open={!FOLDED.has(group.path) || opened.current}>
      <summary id={path.length === 0 ? 'field-job' : fieldId(path)}>
        <Heading>{group.title}</Heading>
        {wrong ? <span class="group-wrong">needs attention</span> : null}
      </summary>
      <div class="group-fields">
        {group.entries.map((entry) => (
          <EntryView key={'field' in entry ? entry.field.path : entry.group.path} entry={entry} />
        ))}
      </div>
    </details>
  );
}

function EntryView({ entry }: { readonly entry: FormEntry }): VNode {
  if ('field' in entry) return <FieldRow field={entry.field} path={entry.field.path.split('.')} />;
  const { group } = entry;
  const list = group.entries[0];
  // a list has one group for all of its entries
  if (list !== undefined && 'group' in list && list.group.path.endsWith('.*')) {
    return <ElectrodeTable fields={fieldsIn(list.group)} />;
  }
  return <GroupView group={group} inner />;
}
