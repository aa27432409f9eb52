import type { VNode } from 'preact';
import { lookAtShop, signOut } from '../api/index.ts';
import { useSession } from '../ui/session/index.ts';

/** Who is signed in, in which shop; nothing where nobody signs in. */
export function AccountBar(): VNode | null {
  const { signed_in: person } = useSession();
  if (person === null) return null;
  const { name, role, shop, shops } = person;
  // another shop has other jobs, another kit: nothing that is shown stays
  const begin = (): void => location.assign('/');
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
      <button type="button" onClick={() => void signOut().then(begin)}>
        Sign out
      </button>
    </div>
  );
}
