import type { ComponentChildren, VNode } from 'preact';
import { goTo } from './use-route.ts';

interface PageLinkProps {
  readonly to: string;
  readonly class?: string;
  /** Whether this is where the person is. */
  readonly here?: boolean | undefined;
  readonly children: ComponentChildren;
}

/** A link to a page of the app; with a modifier key it opens as any link does. */
export function PageLink({ to, class: name, here = false, children }: PageLinkProps): VNode {
  const follow = (event: MouseEvent): void => {
    if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    goTo(to);
  };
  return (
    <a href={to} class={name} onClick={follow} aria-current={here ? 'true' : undefined}>
      {children}
    </a>
  );
}
