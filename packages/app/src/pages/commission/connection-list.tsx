import type { Connection, UnitSystem } from '@furrow/engine';
import { connectionWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { connectionId } from './connection-id.ts';
import { useRig, useRigState } from './rig-context.ts';

interface ConnectionListProps {
  readonly connections: readonly Connection[];
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
          <ConnectionRow key={connectionId(connection)} connection={connection} system={system} />
        ))}
      </ol>
    </section>
  );
}

const KINDS: Readonly<Record<Connection['kind'], string>> = {
  lead: 'lead',
  joint: 'joint',
  sense_wire: 'sense wire',
  air: 'air hose or pipe',
};

interface ConnectionRowProps {
  readonly connection: Connection;
  readonly system: UnitSystem;
}

function ConnectionRow({ connection, system }: ConnectionRowProps): VNode {
  const { number, kind, name, from, to, polarity, tightness } = connection;
  const id = connectionId(connection);
  const rig = useRig();
  const done = useRigState((state) => Object.hasOwn(state.record.ticks, id));
  const { size, length, loss } = connectionWords(connection, system);
  const facts = [
    KINDS[kind],
    size,
    length,
    polarity === null ? '' : `${polarity} pole`,
    loss === '' ? '' : `loses ${loss} at the set current`,
  ];
  return (
    <li class="connection">
      <label class="tick">
        <input
          type="checkbox"
          checked={done}
          aria-describedby={`connection-${number}`}
          onChange={(event) => rig.tick(id, event.currentTarget.checked)}
        />
        <span>
          <strong>{name}</strong>
          <span class="connection-way">
            {from} → {to}
          </span>
        </span>
      </label>
      <p class="connection-facts" id={`connection-${number}`}>
        <span>{facts.filter((fact) => fact !== '').join(' · ')}</span>
        <span class="aside"> {tightness}</span>
      </p>
    </li>
  );
}
