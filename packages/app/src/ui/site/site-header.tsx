import type { ComponentChildren, VNode } from 'preact';
import { useEffect } from 'preact/hooks';
import { PageLink } from '../route/index.ts';
import { SettingsControls } from '../theme/index.ts';

interface SiteHeaderProps {
  readonly title: string;
  readonly state?: ComponentChildren;
  readonly children?: ComponentChildren;
}

/** Top of every page: the name, the way to the saved jobs, the page's title and what can be done on it. */
export function SiteHeader({ title, state, children }: SiteHeaderProps): VNode {
  useEffect(() => {
    document.title = `${title} · Furrow`;
  }, [title]);
  return (
    <header class="site-header">
      <a class="skip-link" href="#result">
        Skip to the result
      </a>
      <div class="brand">
        <PageLink to="/" class="brand-name">
          <svg class="brand-mark" viewBox="0 0 28 20" aria-hidden="true">
            <path class="brand-plate" d="M0 6h7c2 0 2 9 7 9s5-9 7-9h7v14H0z" />
            <path class="brand-arc" d="M19 0l-5 11" />
          </svg>
          Furrow
        </PageLink>
        <nav aria-label="Pages">
          <PageLink to="/jobs">Saved jobs</PageLink>
          <PageLink to="/kit">Kit</PageLink>
        </nav>
      </div>
      <div class="page-title">
        <h1>{title}</h1>
        {state}
      </div>
      <SettingsControls />
      {children}
    </header>
  );
}
