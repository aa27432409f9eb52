import type { ComponentChildren, VNode } from 'preact';

interface ScrollBoxProps {
  /** What it holds, for screen readers. */
  readonly name: string;
  readonly children: ComponentChildren;
}

/** Holds a table that may be too wide: it scrolls by itself, with the keys too. */
export function ScrollBox({ name, children }: ScrollBoxProps): VNode {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keys
    <section class="scroll-x" aria-label={name} tabIndex={0}>
      {children}
    </section>
  );
}
