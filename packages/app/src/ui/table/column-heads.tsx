import type { VNode } from 'preact';

/** The head of a table: the names of its columns. */
export function ColumnHeads({ names }: { readonly names: readonly string[] }): VNode {
  return (
    <thead>
      <tr>
        {names.map((name) => (
          <th key={name} scope="col">
            {name}
          </th>
        ))}
      </tr>
    </thead>
  );
}
