import type { DocumentPath } from '@furrow/engine';

/** One change to a job file: a value set, a field or a list entry taken out, an entry put at the end of a list. */
export type Edit =
  | { readonly do: 'set'; readonly path: DocumentPath; readonly value: string | number }
  | { readonly do: 'remove'; readonly path: DocumentPath }
  | {
      readonly do: 'append';
      readonly path: DocumentPath;
      readonly entry: Readonly<Record<string, string | number>>;
    };
