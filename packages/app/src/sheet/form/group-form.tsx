import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { useSheet, useSheetState } from '../index.ts';
import { formGroups } from './form-group.ts';
import { GroupView } from './group-view.tsx';

interface GroupFormProps {
  /** Paths of the groups, in the order wanted. */
  readonly paths: readonly string[];
  /** Name of the form for screen readers. */
  readonly name: string;
}

/** Some groups of the file, unfolded: what a page beside the bench rests on. */
export function GroupForm({ paths, name }: GroupFormProps): VNode {
  const { noun } = useSheet();
  const fields = useSheetState((state) => state.file.fields);
  const broken = useSheetState((state) => state.file.broken);
  const refused = useSheetState((state) => state.editRefused);
  const groups = useMemo(() => formGroups(fields.all), [fields]);
  return (
    <form
      class="job-form group-form"
      aria-label={name}
      autocomplete="off"
      onSubmit={(event) => event.preventDefault()}
    >
      {broken ? (
        <p class="notice">
          The text of the {noun} has a mistake in its layout; until it is put right the form only shows.
        </p>
      ) : null}
      {refused === undefined ? null : <p class="notice">{refused}</p>}
      {paths.flatMap((path) =>
        groups
          .filter((group) => group.path === path)
          .map((group) => <GroupView key={path} group={group} unfolded />),
      )}
    </form>
  );
}
