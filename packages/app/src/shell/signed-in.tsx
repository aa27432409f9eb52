import type { Session } from '@furrow/contract';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchSession, pageOfShop } from '../api/index.ts';
import { keepFor, NO_ACCOUNTS, SessionContext } from '../ui/session/index.ts';
import { App } from './app.tsx';
import { SignInPage } from './sign-in-page.tsx';
import './session.css';

/** The app, once it is known who is there: on a computer of one's own nobody signs in. */
export function SignedIn(): VNode | null {
  const [session, setSession] = useState<Session>();
  useEffect(() => {
    // without an answer the app shows what it can, and says what it cannot
    void fetchSession().then((reply) => setSession(reply.ok ? reply.value : NO_ACCOUNTS));
  }, []);
  if (session === undefined) return null;
  if (session.accounts && (session.signed_in === null || location.pathname === '/sign-in'))
    return <SignInPage provider={session.provider} onSignedIn={setSession} />;
  const there = session.signed_in;
  pageOfShop(there?.shop?.id);
  keepFor(there === null ? undefined : { account: there.name, shop: there.shop?.id ?? '' });
  return (
    <SessionContext.Provider value={session}>
      <App />
    </SessionContext.Provider>
  );
}
