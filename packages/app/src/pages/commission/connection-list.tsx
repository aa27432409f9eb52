import { type Connection, formatStated, type UnitSystem } from '@furrow/engine';
import { conductorWords } from '@furrow/papers/words';
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

function sizeText(size: string, parallels: number | null): string {
  return parallels === null || parallels === 1 ? size : `${parallels} × ${size} side by side`;
}

interface ConnectionRowProps {
  readonly connection: Connection;
  readonly system: UnitSystem;
}

function ConnectionRow({ connection, system }: ConnectionRowProps): VNode {
  const { number, kind, name, from, to, size, parallels, length_mm, polarity, voltage_V, tightness } =
    connection;
  const id = connectionId(connection);
  const rig = useRig();
  const done = useRigState((state) => Object.hasOwn(state.record.ticks, id));
  const facts = [
    KINDS[kind],
    size === null ? '' : sizeText(conductorWords(size, system), parallels),
    length_mm === null ? '' : formatStated(length_mm, 'mm', system, 'length'),
    polarity === null ? '' : `${polarity} pole`,
    voltage_V === null ? '' : `loses ${formatStated(voltage_V, 'V', system)} at the set current`,
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
