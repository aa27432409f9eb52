import { type Account, ROLES } from '@furrow/contract';
import type { VNode } from 'preact';
import { ScrollBox } from '../../ui/table/index.ts';
import type { Shop } from './shop-panel.tsx';

type Rights = Pick<Account, 'administrator' | 'shut' | 'shops'>;

interface PeopleTableProps {
  readonly accounts: readonly Account[];
  readonly shops: readonly Shop[];
  readonly onRights: (account: Account, rights: Rights) => void;
  readonly onLink: (account: Account) => void;
  readonly onAdd: (name: string) => void;
}

/** Everybody who may sign in, with what they are in each shop. */
export function PeopleTable({ accounts, shops, onRights, onLink, onAdd }: PeopleTableProps): VNode {
  return (
    <section class="panel" aria-labelledby="people-title">
      <header class="panel-head">
        <h2 id="people-title">People</h2>
        <p class="caption">an administrator is one in every shop</p>
      </header>
      <ScrollBox name="People, table">
        <table>
          <thead>
            <tr>
              <th scope="col">Name</th>
              {shops.map(({ id, name }) => (
                <th key={id} scope="col">
                  {name}
                </th>
              ))}
              <th scope="col">Administrator</th>
              <th scope="col">Do</th>
            </tr>
          </thead>
          <tbody>
            {accounts.map((account) => (
              <PersonRow
                key={account.id}
                account={account}
                shops={shops}
                onRights={onRights}
                onLink={onLink}
              />
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <form
        class="add-row"
        onSubmit={(event) => {
          event.preventDefault();
          const name = String(new FormData(event.currentTarget).get('name') ?? '').trim();
          event.currentTarget.reset();
          if (name !== '') onAdd(name);
        }}
      >
        <label>
          Name of a person <input name="name" type="text" maxLength={80} required autocomplete="off" />
        </label>
        <button type="submit">Let in</button>
      </form>
    </section>
  );
}

type PersonRowProps = Pick<PeopleTableProps, 'shops' | 'onRights' | 'onLink'> & { readonly account: Account };

function PersonRow({ account, shops, onRights, onLink }: PersonRowProps): VNode {
  const { name, administrator, shut, opened } = account;
  const rights = { administrator, shut, shops: account.shops };
  const inShop = (shop: string, role: string): Account['shops'] => {
    const { [shop]: _, ...others } = account.shops;
    const chosen = ROLES.find((each) => each === role);
    return chosen === undefined ? others : { ...others, [shop]: chosen };
  };
  return (
    <tr>
      <th scope="row">
        {name}
        {shut ? (
          <span class="aside"> shut</span>
        ) : opened ? null : (
          <span class="aside"> has no password yet</span>
        )}
      </th>
      {shops.map((shop) => (
        <td key={shop.id}>
          <select
            aria-label={`What ${name} is in ${shop.name}`}
            value={account.shops[shop.id] ?? ''}
            onChange={(event) =>
              onRights(account, { ...rights, shops: inShop(shop.id, event.currentTarget.value) })
            }
          >
            <option value="">not here</option>
            {ROLES.map((role) => (
              <option key={role} value={role}>
                {role}
              </option>
            ))}
          </select>
        </td>
      ))}
      <td>
        <input
          type="checkbox"
          aria-label={`${name} is an administrator`}
          checked={administrator}
          onChange={(event) => onRights(account, { ...rights, administrator: event.currentTarget.checked })}
        />
      </td>
      <td class="row-actions">
        <button type="button" aria-label={`Make a one-time link for ${name}`} onClick={() => onLink(account)}>
          One-time link
        </button>
        <button
          type="button"
          aria-label={`${shut ? 'Open' : 'Shut'} the account of ${name}`}
          onClick={() => onRights(account, { ...rights, shut: !shut })}
        >
          {shut ? 'Open' : 'Shut'}
        </button>
      </td>
    </tr>
  );
}
