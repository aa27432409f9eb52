import type { ComponentChildren, VNode } from 'preact';
import { useEffect } from 'preact/hooks';
import { usePage } from './page-context.ts';

interface SiteHeaderProps {
  /** What the page is about, such as the job's title; the page's own title if left out. */
  readonly title?: string;
  /** Where it stands between page and store. */
  readonly state?: ComponentChildren;
  /** What can be done with it as a whole. */
  readonly children?: ComponentChildren;
}

/** Head of a page: the other pages of its place, what it is about, what can be done with it. */
export function SiteHeader({ title, state, children }: SiteHeaderProps): VNode {
  const page = usePage();
  const told =
    title === undefined ? page.title : page.titled === 'page and job' ? `${page.title}: ${title}` : title;
  useEffect(() => {
    document.title = `${told} · Furrow`;
  }, [told]);
  return (
    <div class="page-head">
      {page.tabs}
      <div class="page-title">
        <h1>{told}</h1>
        {state}
      </div>
      {children}
    </div>
  );
}
