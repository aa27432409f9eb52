import type { ComponentChildren, VNode } from 'preact';
import { BlockTable, type BlockTableProps } from './block-table.tsx';

interface BlockPanelProps extends BlockTableProps {
  readonly id: string;
  /** Heading, where the caption of the table would not do. */
  readonly title?: string;
  readonly note?: string | undefined;
  /** What stands between the heading and the table. */
  readonly lead?: ComponentChildren;
  /** What stands below it. */
  readonly children?: ComponentChildren;
}

/** A table of a paper in a panel of its own, headed by its caption. */
export function BlockPanel({ id, title, note, lead, children, ...shown }: BlockPanelProps): VNode {
  return (
    <section class={`panel ${id}`} aria-labelledby={`${id}-title`}>
      <header class="panel-head">
        <h2 id={`${id}-title`}>{title ?? shown.table.caption}</h2>
        {note === undefined ? null : <p class="caption">{note}</p>}
      </header>
      {lead}
      <BlockTable {...shown} />
      {children}
    </section>
  );
}
