import { API_PATHS, type Session } from '@furrow/contract';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { type Reply, signIn, usePasswordLink } from '../api/index.ts';

interface SignInProps {
  /** Name of the provider that people may sign in by. */
  readonly provider: string | null;
  readonly onSignedIn: (session: Session) => void;
}

/** Secret of the one-time link that the page was opened by. */
function linkOf(hash: string): string | undefined {
  return /^#link=([\w-]+)$/u.exec(hash)?.[1];
}

/** All that is shown to whoever has not signed in: name and password, or a new password where a link was opened. */
export function SignInPage({ provider, onSignedIn }: SignInProps): VNode {
  const [link, setLink] = useState(() => linkOf(location.hash));
  const [trouble, setTrouble] = useState<string>();
  const [busy, setBusy] = useState(false);
  const send = async (asked: Promise<Reply<Session>>): Promise<void> => {
    setBusy(true);
    const reply = await asked;
    setBusy(false);
    if (!reply.ok) {
      setTrouble(reply.failure.message);
      return;
    }
    // the secret of a link stays in no address and no history
    if (location.pathname === '/sign-in') history.replaceState(null, '', '/');
    onSignedIn(reply.value);
  };
  return (
    <main class="sign-in" id="result">
      <form
        class="panel"
        aria-labelledby="sign-in-title"
        onSubmit={(event) => {
          event.preventDefault();
          const form = new FormData(event.currentTarget);
          const field = (name: string): string => String(form.get(name) ?? '');
          if (link === undefined) void send(signIn(field('name'), field('password')));
          else if (field('password') === field('again')) void send(usePasswordLink(link, field('password')));
          else setTrouble('The two passwords differ.');
        }}
      >
        <h1 id="sign-in-title">{link === undefined ? 'Sign in to Furrow' : 'Set your password'}</h1>
        {trouble === undefined ? null : (
          <p class="notice" role="alert">
            {trouble}
          </p>
        )}
        {link === undefined ? (
          <>
            <label>
              Name
              <input name="name" type="text" autocomplete="username" required maxLength={80} />
            </label>
            <label>
              Password
              <input
                name="password"
                type="password"
                autocomplete="current-password"
                required
                maxLength={256}
              />
            </label>
          </>
        ) : (
          <>
            <p>At least 12 characters; a few words that do not belong together are good.</p>
            <label>
              Password
              <input
                name="password"
                type="password"
                autocomplete="new-password"
                required
                minLength={12}
                maxLength={256}
              />
            </label>
            <label>
              Again
              <input
                name="again"
                type="password"
                autocomplete="new-password"
                required
                minLength={12}
                maxLength={256}
              />
            </label>
          </>
        )}
        <button type="submit" class="primary" disabled={busy}>
          {busy ? 'One moment' : link === undefined ? 'Sign in' : 'Set it and sign in'}
        </button>
        {link === undefined && provider !== null ? (
          <a class="button" href={API_PATHS.signInProvider}>
            Sign in by {provider}
          </a>
        ) : null}
        {link === undefined ? (
          <p class="caption">
            No account, or the password forgotten? An administrator makes a one-time link.
          </p>
        ) : (
          <button type="button" onClick={() => setLink(undefined)}>
            Sign in with a password instead
          </button>
        )}
      </form>
    </main>
  );
}
