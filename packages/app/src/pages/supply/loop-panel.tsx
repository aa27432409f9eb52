import { type ElectricPoint, formatAmount, formatStated } from '@furrow/engine';
import type { VNode } from 'preact';
import { ColumnHeads, ScrollTable } from '../../ui/table/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** The electric loop: what each source gives, where its volts and its heat go, and the sense wires. */
export function LoopPanel({ loop }: { readonly loop: ElectricPoint }): VNode {
  const units = useUnits();
  return (
    <>
      <ScrollTable
        id="sources"
        title="Power sources"
        note={loop.input_kVA === null ? undefined : `${loop.input_kVA.toFixed(1)} kVA from the mains`}
      >
        <ColumnHeads
          names={[
            'Source',
            'Current',
            'Share',
            'At its terminals',
            'No load',
            'Minutes in ten',
            'Mains line',
          ]}
        />
        <tbody>
          {loop.sources.map((source) => (
            <tr key={source.name}>
              <th scope="row">
                {source.name}
                {source.drops_out ? <span class="in-use"> drops out</span> : null}
              </th>
              <td>{formatStated(source.current_A, 'A', units)}</td>
              <td>{source.share_percent.toFixed(0)} %</td>
              <td>{formatStated(source.terminal_voltage_V, 'V', units)}</td>
              <td>{formatStated(source.no_load_voltage_V, 'V', units)}</td>
              <td>{source.permissible_minutes.toFixed(1)} min</td>
              <td>
                {source.line_current_A === null
                  ? 'not stated'
                  : formatStated(source.line_current_A, 'A', units)}
              </td>
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      <ScrollTable
        id="losses"
        title="Where the volts go"
        note={`from ${formatStated(loop.needed_V, 'V', units)} at the terminals to ${formatStated(loop.arc_voltage_V, 'V', units)} in the arc`}
      >
        <ColumnHeads names={['Lead', 'Part', 'Voltage', 'Heat', 'Share of the loss']} />
        <tbody>
          {loop.losses.map((loss, index) => (
            <tr key={`${index} ${loss.lead} ${loss.joint ?? ''}`}>
              <th scope="row">{loss.lead}</th>
              <td>{loss.joint === null ? 'its copper' : `joint: ${loss.joint}`}</td>
              <td>{formatAmount(loss.drop_V, 'voltage', units)}</td>
              <td>{formatAmount(loss.loss_W, 'power', units)}</td>
              <td>
                <ShareBar share={loop.loss_W > 0 ? loss.loss_W / loop.loss_W : 0} />
              </td>
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      {loop.sense.length === 0 ? null : (
        <section class="panel" aria-labelledby="sense-title">
          <header class="panel-head">
            <h2 id="sense-title">Sense wires landed wrong</h2>
          </header>
          <ul class="plain-list">
            {loop.sense.map((sense) => (
              <li key={sense.landed}>
                <b>{sense.landed}</b>: {sense.says}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** A share as a bar with its number beside it. */
function ShareBar({ share }: { readonly share: number }): VNode {
  return (
    <span class="share">
      <svg class="share-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        <rect class="share-all" width={100} height={10} />
        <rect class="share-part" width={Math.round(1000 * share) / 10} height={10} />
      </svg>
      {(100 * share).toFixed(0)} %
    </span>
  );
}
