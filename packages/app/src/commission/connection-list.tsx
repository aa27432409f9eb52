import type { ConnectionReport, UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { shownSize } from '../amount/index.ts';
import { useRig, useRigState } from './rig-context.ts';

interface ConnectionListProps {
  readonly connections: readonly ConnectionReport[];
  readonly system: UnitSystem;
}

/** The connection schedule, to be ticked row by row. */
export function ConnectionList({ connections, system }: ConnectionListProps): VNode {
  return (
    <section class="panel" aria-labelledby="connections-title">
      <header class="panel-head">
        <h2 id="connections-title">Connections</h2>
        <p class="caption">
          power off, locked out and tried dead by the local rules; tick what is made and tight
        </p>
      </header>
      <ol class="connection-list">
        {connections.map((connection) => (
          <ConnectionRow key={connection.id} connection={connection} system={system} />
        ))}
      </ol>
    </section>
  );
}

interface ConnectionRowProps {
  readonly connection: ConnectionReport;
  readonly system: UnitSystem;
}

function ConnectionRow({ connection, system }: ConnectionRowProps): VNode {
  const { id, kind, name, from, to, size, length_m, polarity, check } = connection;
  const rig = useRig();
  const done = useRigState((state) => Object.hasOwn(state.record.ticks, id));
  const facts = [
    kind,
    size,
    length_m === null ? '' : shownSize(length_m * 1000, system),
    polarity === null ? '' : `${polarity} pole`,
  ];
  return (
    <li class="connection">
      <label class="tick">
        <input
          type="checkbox"
          checked={done}
          aria-describedby={`connection-${id}`}
          onChange={(event) => rig.tick(id, event.currentTarget.checked)}
        />
        <span>
          <strong>{name}</strong>
          <span class="connection-way">
            {from} → {to}
          </span>
        </span>
      </label>
      <p class="connection-facts" id={`connection-${id}`}>
        <span>{facts.filter((fact) => fact !== '').join(' · ')}</span>
        <span class="aside"> {check}</span>
      </p>
    </li>
  );
}
