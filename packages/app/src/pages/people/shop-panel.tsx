import type { Machine } from '@furrow/contract';
import type { VNode } from 'preact';
import { ScrollBox } from '../../ui/table/index.ts';

/** A shop of the company. */
export interface Shop {
  readonly id: string;
  readonly name: string;
}

interface ShopPanelProps {
  readonly shops: readonly Shop[];
  readonly machines: readonly Machine[];
  readonly onOpen: (shop: Shop) => void;
  readonly onMachine: (machine: { readonly shop: string; readonly name: string }) => void;
  readonly onMachineOut: (machine: Machine) => void;
}

/** The shops, and the loggers and gateways that bring readings into them. */
export function ShopPanel({ shops, machines, onOpen, onMachine, onMachineOut }: ShopPanelProps): VNode {
  const send = (event: SubmitEvent, take: (field: (name: string) => string) => void): void => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const data = new FormData(form);
    take((name) => String(data.get(name) ?? '').trim());
    form.reset();
  };
  return (
    <section class="panel" aria-labelledby="shops-title">
      <header class="panel-head">
        <h2 id="shops-title">Shops and their loggers</h2>
        <p class="caption">a logger brings readings and files in, and does nothing else</p>
      </header>
      <ScrollBox name="Shops and loggers, table">
        <table>
          <thead>
            <tr>
              <th scope="col">Shop</th>
              <th scope="col">Loggers and gateways</th>
            </tr>
          </thead>
          <tbody>
            {shops.map(({ id, name }) => (
              <tr key={id}>
                <th scope="row">
                  {name}
                  <span class="aside"> {id}</span>
                </th>
                <td>
                  {machines
                    .filter(({ shop }) => shop === id)
                    .map((machine) => (
                      <button
                        key={machine.id}
                        type="button"
                        aria-label={`Let ${machine.name} in no longer`}
                        onClick={() => onMachineOut(machine)}
                      >
                        {machine.name}: let in no longer
                      </button>
                    ))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <form
        class="add-row"
        onSubmit={(event) => send(event, (field) => onOpen({ id: field('id'), name: field('name') }))}
      >
        <label>
          Short name{' '}
          <input
            name="id"
            type="text"
            pattern="[a-z0-9][a-z0-9\-]{0,39}"
            title="small letters, digits and hyphens"
            required
          />
        </label>
        <label>
          Name of the shop <input name="name" type="text" maxLength={80} required />
        </label>
        <button type="submit">Open a shop</button>
      </form>
      <form
        class="add-row"
        onSubmit={(event) => send(event, (field) => onMachine({ shop: field('shop'), name: field('name') }))}
      >
        <label>
          Shop{' '}
          <select name="shop">
            {shops.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          Name of a logger <input name="name" type="text" maxLength={80} required />
        </label>
        <button type="submit">Make a token</button>
      </form>
    </section>
  );
}
