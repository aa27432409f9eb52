import type { Session } from '@furrow/contract';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { keepAnswersFor, pageOfShop } from '../api/index.ts';
import { keepFor, ownerOf, SessionContext } from '../ui/session/index.ts';
import { App } from './app.tsx';
import { openSession, rememberSession } from './known-session.ts';
import { SignInPage } from './sign-in-page.tsx';
import './session.css';

/** The app, once it is known who is there: on a computer of one's own nobody signs in. */
export function SignedIn(): VNode | null {
  const [session, setSession] = useState<Session>();
  const ask = (): void => void openSession().then(setSession);
  useEffect(ask, []);
  if (session === undefined) return null;
  if (session.accounts && (session.signed_in === null || location.pathname === '/sign-in')) {
    const begin = (next: Session): void => {
      rememberSession(next);
      setSession(next);
    };
    return <SignInPage provider={session.provider} onSignedIn={begin} />;
  }
  const owner = ownerOf(session);
  pageOfShop(session.signed_in?.shop?.id);
  keepFor(owner);
  keepAnswersFor(owner === undefined ? undefined : [owner.shop, owner.account]);
  return (
    <SessionContext.Provider value={session}>
      <App key={JSON.stringify(owner ?? null)} onReachedAgain={ask} />
    </SessionContext.Provider>
  );
}
