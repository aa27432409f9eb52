import type { VNode } from 'preact';
import { PageLink } from '../route/index.ts';
import { SiteHeader } from './site-header.tsx';

interface WaitingProps {
  readonly text: string;
  /** Whether this is not a wait but the end of it. */
  readonly trouble?: boolean;
}

/** A page that is on its way, or says why it does not come. */
export function Waiting({ text, trouble = false }: WaitingProps): VNode {
  return (
    <>
      <SiteHeader />
      <main class="plain-page" id="result" tabIndex={-1}>
        {trouble ? (
          <>
            <p class="notice" role="alert">
              {text}
            </p>
            <p>
              <PageLink to="/">Demo job</PageLink> or <PageLink to="/jobs">saved jobs</PageLink>
            </p>
          </>
        ) : (
          <p role="status">{text}</p>
        )}
      </main>
    </>
  );
}
