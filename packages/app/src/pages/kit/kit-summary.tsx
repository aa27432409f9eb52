import { kitFields } from '@furrow/engine';
import { defaultText } from '@furrow/papers/words';
import type { VNode } from 'preact';
import type { KitDesk } from '../../job/kit/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { kitNumbers } from './kit-numbers.ts';

/** The kit in a few tables: what there is, as it was read. */
export function KitSummary({ desk }: { readonly desk: KitDesk }): VNode {
  const read = useSelected(desk.store, (state) => state.read);
  const wrong = useSelected(desk.store, (state) => state.issues.length > 0);
  const units = useUnits();
  if (read === undefined) {
    return (
      <p class="empty">
        What the kit amounts to appears here once it can be read; its mistakes stand in the form.
      </p>
    );
  }
  return (
    <div class={`result-details${wrong ? ' outdated' : ''}`}>
      {kitNumbers(read.kit, units).map(({ id, title, heads, rows }) => (
        <ScrollTable key={id} id={id} title={title}>
          <ColumnHeads names={heads} />
          <tbody>
            {rows.map(([name = '', ...cells], index) => (
              <tr key={`${index} ${name}`}>
                <th scope="row">{name}</th>
                {cells.map((cell, column) => (
                  <td key={heads[column + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </ScrollTable>
      ))}
      <section class="panel" aria-labelledby="kit-defaults-title">
        <header class="panel-head">
          <h2 id="kit-defaults-title">What is not stated</h2>
        </header>
        <details class="defaults">
          <summary>
            {read.defaultsUsed.length === 0
              ? 'No defaults used'
              : `${read.defaultsUsed.length} defaults used`}
          </summary>
          <ul>
            {read.defaultsUsed.map((each) => (
              <li key={each.path}>
                <code>{each.path}</code>: {defaultText(each, kitFields(), units)}{' '}
                <span class="aside">({each.why})</span>
              </li>
            ))}
          </ul>
        </details>
      </section>
    </div>
  );
}
