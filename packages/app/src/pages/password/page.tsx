import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { changePassword } from '../../api/index.ts';
import { useSession } from '../../ui/session/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import './style.css';

/** Sets a new password of whoever is signed in; every other sign-in of theirs ends. */
export function PasswordPage(): VNode {
  const person = useSession().signed_in;
  const [told, setTold] = useState<{ readonly text: string; readonly trouble: boolean }>();
  const [busy, setBusy] = useState(false);
  const change = async (form: HTMLFormElement): Promise<void> => {
    const data = new FormData(form);
    const field = (name: string): string => String(data.get(name) ?? '');
    if (field('next') !== field('again')) {
      setTold({ text: 'The two new passwords differ.', trouble: true });
      return;
    }
    setBusy(true);
    const reply = await changePassword(field('password'), field('next'));
    setBusy(false);
    if (reply.ok) form.reset();
    setTold(
      reply.ok
        ? { text: 'The new password holds. Every other sign-in of yours has ended.', trouble: false }
        : { text: reply.failure.message, trouble: true },
    );
  };
  return (
    <>
      <SiteHeader />
      <main class="plain-page" id="result" tabIndex={-1}>
        {person === null ? (
          <p>Nobody signs in here.</p>
        ) : (
          <form
            class="panel password-form"
            aria-labelledby="password-title"
            onSubmit={(event) => {
              event.preventDefault();
              void change(event.currentTarget);
            }}
          >
            <h2 id="password-title">New password for {person.name}</h2>
            <p>At least 12 characters; a few words that do not belong together are good.</p>
            <p role={told?.trouble === true ? 'alert' : 'status'} class={told === undefined ? '' : 'notice'}>
              {told?.text}
            </p>
            <input type="text" name="name" value={person.name} autocomplete="username" hidden readOnly />
            <PasswordField label="Password as it is" name="password" complete="current-password" />
            <PasswordField label="New password" name="next" complete="new-password" />
            <PasswordField label="New password again" name="again" complete="new-password" />
            <button type="submit" class="primary" disabled={busy}>
              {busy ? 'One moment' : 'Set it'}
            </button>
          </form>
        )}
      </main>
    </>
  );
}

function PasswordField({
  label,
  name,
  complete,
}: {
  readonly label: string;
  readonly name: string;
  readonly complete: 'current-password' | 'new-password';
}): VNode {
  return (
    <label>
      {label}
      <input
        name={name}
        type="password"
        autocomplete={complete}
        required
        minLength={complete === 'new-password' ? 12 : 1}
        maxLength={256}
      />
    </label>
  );
}
