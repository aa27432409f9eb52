import { formatStated, type HoseChangesReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { Said, useUnits } from '../../ui/theme/index.ts';

/** The shortest list of hose changes that restores the pressure, or the best the stock can do. */
export function HoseChangesPanel({ changes }: { readonly changes: HoseChangesReport }): VNode {
  const units = useUnits();
  const text = (kPa: number): string => formatStated(kPa, 'kPa', units);
  return (
    <section class="panel" aria-labelledby="hoses-title">
      <header class="panel-head">
        <h2 id="hoses-title">
          {changes.reached ? 'Hoses to change' : 'Hoses to change, as far as the stock goes'}
        </h2>
        <p class="caption">
          {text(changes.before_kPa)} becomes {text(changes.after_kPa)}{' '}
          {changes.at === 'regulator' ? 'behind the regulator' : 'before the torch'}, with{' '}
          {text(changes.receiver_kPa)} in the receiver
        </p>
      </header>
      <p>
        <Said sentence={changes.says} />
      </p>
      {changes.changes.length === 0 ? null : (
        <ol class="change-list">
          {changes.changes.map((change) => (
            <li key={change.out}>
              Take out <b>{change.out}</b>, put in <b>{change.in}</b>.
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
