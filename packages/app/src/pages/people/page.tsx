import type { Account, Machine } from '@furrow/contract';
import type { VNode } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import {
  addAccount,
  addMachine,
  eraseMachine,
  fetchAccounts,
  fetchMachines,
  fetchShops,
  makePasswordLink,
  openShop,
  type Reply,
  setAccountRights,
} from '../../api/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { PeopleTable } from './people-table.tsx';
import { type Shop, ShopPanel } from './shop-panel.tsx';
import './style.css';

interface Lists {
  readonly accounts: readonly Account[];
  readonly shops: readonly Shop[];
  readonly machines: readonly Machine[];
}

/** Who may come in, and what they are in which shop. */
export function PeoplePage(): VNode {
  const [lists, setLists] = useState<Lists>();
  const [told, setTold] = useState<string>();
  const [secret, setSecret] = useState<{ readonly what: string; readonly text: string }>();
  const [trouble, setTrouble] = useState<string>();
  const load = useCallback(async (): Promise<void> => {
    const [accounts, shops, machines] = await Promise.all([fetchAccounts(), fetchShops(), fetchMachines()]);
    if (!accounts.ok) setTrouble(accounts.failure.message);
    else if (!shops.ok) setTrouble(shops.failure.message);
    else if (!machines.ok) setTrouble(machines.failure.message);
    else setLists({ accounts: accounts.value, shops: shops.value, machines: machines.value });
  }, []);
  useEffect(() => void load(), [load]);
  const act = async <T,>(action: Promise<Reply<T>>, done: (value: T) => void): Promise<void> => {
    setTrouble(undefined);
    setTold(undefined);
    setSecret(undefined);
    const reply = await action;
    if (reply.ok) done(reply.value);
    else setTrouble(reply.failure.message);
    await load();
  };
  const link = (account: Account): Promise<void> =>
    act(makePasswordLink(account.id), ({ path }) =>
      setSecret({
        what: `Hand this link to ${account.name}. It sets a password once, within a day:`,
        text: location.origin + path,
      }),
    );
  return (
    <>
      <SiteHeader />
      <main class="plain-page" id="result" tabIndex={-1}>
        <p class="status" role="status">
          {told ?? (lists === undefined && trouble === undefined ? 'Reading the lists.' : '')}
        </p>
        {trouble === undefined ? null : (
          <p class="notice" role="alert">
            {trouble}
          </p>
        )}
        {secret === undefined ? null : (
          <section class="panel secret" aria-label="Shown this once">
            <p>{secret.what}</p>
            <p class="secret-text">{secret.text}</p>
          </section>
        )}
        {lists === undefined ? null : (
          <>
            <PeopleTable
              accounts={lists.accounts}
              shops={lists.shops}
              onRights={({ id, name }, rights) =>
                void act(setAccountRights(id, rights), () => setTold(`What ${name} may do is set.`))
              }
              onLink={(account) => void link(account)}
              onAdd={(name) =>
                void act(addAccount({ name, administrator: false, shops: {} }), () =>
                  setTold(`${name} is let in: say in which shop as what, and make a link.`),
                )
              }
            />
            <ShopPanel
              shops={lists.shops}
              machines={lists.machines}
              onOpen={(shop) => void act(openShop(shop), () => setTold(`The shop “${shop.name}” is open.`))}
              onMachine={(machine) =>
                void act(addMachine(machine), ({ token, name }) =>
                  setSecret({
                    what: `Token of ${name}, sent as “Authorization: Bearer …”; it is shown this once:`,
                    text: token,
                  }),
                )
              }
              onMachineOut={({ id, name }) =>
                void act(eraseMachine(id), () => setTold(`${name} brings no readings any longer.`))
              }
            />
          </>
        )}
      </main>
    </>
  );
}
