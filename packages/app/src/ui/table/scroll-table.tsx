import type { ComponentChildren, VNode } from 'preact';
import { ScrollBox } from './scroll-box.tsx';

interface ScrollTableProps {
  readonly id: string;
  readonly title: string;
  readonly note?: string | undefined;
  readonly children: ComponentChildren;
  /** What stands between the heading and the table. */
  readonly lead?: ComponentChildren;
}

/** A table in a panel of its own; where it is too wide it scrolls by itself, with the keys too. */
export function ScrollTable({ id, title, note, children, lead }: ScrollTableProps): VNode {
  return (
    <section class={`panel ${id}`} aria-labelledby={`${id}-title`}>
      <header class="panel-head">
        <h2 id={`${id}-title`}>{title}</h2>
        {note === undefined ? null : <p class="caption">{note}</p>}
      </header>
      {lead}
      <ScrollBox name={`${title}, table`}>
        <table>{children}</table>
      </ScrollBox>
    </section>
  );
}
