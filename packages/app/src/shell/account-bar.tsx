import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { lookAtShop } from '../api/index.ts';
import { Modal } from '../ui/dialog/index.ts';
import { ownMemory, useSession } from '../ui/session/index.ts';
import { keptWords, keptWork } from './kept-work.ts';
import { leaveSession } from './known-session.ts';

/** Who is signed in, in which shop; nothing where nobody signs in. */
export function AccountBar(): VNode | null {
  const session = useSession();
  const { signed_in: person } = session;
  const [asked, setAsked] = useState<string>();
  if (person === null) return null;
  const { name, role, shop, shops } = person;
  // another shop has other jobs, another kit: nothing that is shown stays
  const begin = (): void => location.assign('/');
  const leave = (): void => void leaveSession(session).then(begin);
  const askOrLeave = (): void => {
    const words = keptWords(keptWork(ownMemory()));
    if (words === '') leave();
    else setAsked(words);
  };
  return (
    <div class="account-bar">
      <select
        aria-label="Shop that is looked at"
        class="account-shop"
        value={shop?.id ?? ''}
        onChange={(event) => void lookAtShop(event.currentTarget.value).then(begin)}
      >
        {shop === null ? <option value="">no shop</option> : null}
        {shops.map((each) => (
          <option key={each.id} value={each.id}>
            {each.name}
          </option>
        ))}
      </select>
      <span class="account-name">
        {name}
        <span class="aside"> {role}</span>
      </span>
      <button type="button" onClick={askOrLeave}>
        Sign out
      </button>
      {asked === undefined ? null : (
        <Modal title="Sign out and lose what is not saved?" onClose={() => setAsked(undefined)}>
          <p>
            Kept on this device and not with the server: {asked}. Signing out clears all of yours from this
            device.
          </p>
          <p class="modal-actions">
            <button type="button" class="primary" onClick={() => setAsked(undefined)}>
              Stay signed in
            </button>
            <button type="button" onClick={leave}>
              Sign out and lose it
            </button>
          </p>
        </Modal>
      )}
    </div>
  );
}
