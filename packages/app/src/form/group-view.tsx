import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { useBenchState } from '../state/index.ts';
import { ElectrodeTable } from './electrode-table.tsx';
import { fieldId } from './field-id.ts';
import { FieldRow } from './field-row.tsx';
import type { FormGroup } from './form-group.ts';

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
        {group.fields.map((field) => (
          <FieldRow key={field.path} field={field} path={field.path.split('.')} />
        ))}
        {group.groups.map((below) =>
          below.path === 'kit.electrodes' ? (
            <ElectrodeTable key={below.path} fields={below.groups.flatMap(({ fields }) => fields)} />
          ) : (
            <GroupView key={below.path} group={below} inner />
          ),
        )}
      </div>
    </details>
  );
}
