import type { RunBegin } from '@furrow/contract';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { Field } from './field.tsx';

type Source = RunBegin['source'];
type Kind = Source['kind'];

interface LiveSourceFormProps {
  readonly disabled: boolean;
  readonly onBegin: (name: string, source: Source) => void;
}

const KINDS: readonly { readonly kind: Kind; readonly title: string }[] = [
  { kind: 'http', title: 'A program that posts newline JSON' },
  { kind: 'mqtt', title: 'A topic of an MQTT broker' },
  { kind: 'modbus', title: 'Registers over Modbus TCP' },
  { kind: 'rehearsal', title: 'A rig that is played (rehearsal)' },
];

/** Registers as they are written in the form, and what each line says. */
const REGISTERS = 'arc voltage [V], 0, uint16, 0.1\ncurrent [A], 1, uint16, 1';

/** Where the readings of a live run come from. */
export function LiveSourceForm({ disabled, onBegin }: LiveSourceFormProps): VNode {
  const [kind, setKind] = useState<Kind>('http');
  const [values, setValues] = useState<Readonly<Record<string, string>>>({
    name: 'Rig',
    url: 'mqtt://127.0.0.1:1883',
    topic: 'rig/1/readings',
    password: '',
    host: '127.0.0.1',
    port: '502',
    unit: '1',
    interval: '100',
    registers: REGISTERS,
    faults: '',
    seed: '1',
  });
  const [wrong, setWrong] = useState('');
  const field = (key: string, label: string): VNode => (
    <Field label={label}>
      <input
        value={values[key]}
        onInput={(event) => setValues({ ...values, [key]: event.currentTarget.value })}
      />
    </Field>
  );
  return (
    <form
      class="live-form"
      onSubmit={(event) => {
        event.preventDefault();
        const source = sourceOf(kind, values);
        setWrong(typeof source === 'string' ? source : '');
        if (typeof source !== 'string') onBegin(values['name'] || 'Rig', source);
      }}
    >
      <Field label="Readings come from">
        <select value={kind} onChange={(event) => setKind(event.currentTarget.value as Kind)}>
          {KINDS.map((each) => (
            <option key={each.kind} value={each.kind}>
              {each.title}
            </option>
          ))}
        </select>
      </Field>
      {field('name', 'Name of the run')}
      {kind === 'mqtt'
        ? [
            field('url', 'Broker, with the user where there is one'),
            field('topic', 'Topic of the rig'),
            field('password', 'Variable with its password, such as FURROW_BROKER_BAY4'),
          ]
        : null}
      {kind === 'modbus' ? (
        <>
          {field('host', 'Device')}
          {field('port', 'Port')}
          {field('unit', 'Unit')}
          {field('interval', 'Every [ms]')}
          <Field label="Registers: name with unit, address, type, factor">
            <textarea
              rows={4}
              value={values['registers']}
              onInput={(event) => setValues({ ...values, registers: event.currentTarget.value })}
            />
          </Field>
        </>
      ) : null}
      {kind === 'rehearsal' ? [field('faults', 'Faults, or all'), field('seed', 'Seed')] : null}
      <div class="log-source-row">
        <button type="submit" class="primary" disabled={disabled}>
          Begin
        </button>
        <p class="status-unread" role="alert">
          {wrong}
        </p>
      </div>
    </form>
  );
}

/** The source as the form has it, or what is wrong with it. */
export function sourceOf(kind: Kind, values: Readonly<Record<string, string>>): Source | string {
  const {
    url = '',
    topic = '',
    password = '',
    host = '',
    port,
    unit,
    interval,
    registers = '',
    faults = '',
    seed,
  } = values;
  switch (kind) {
    case 'http':
      return { kind };
    case 'mqtt':
      return {
        kind,
        url: url.trim(),
        topic: topic.trim(),
        ...(password.trim() === '' ? {} : { password_env: password.trim() }),
      };
    case 'rehearsal':
      return { kind, faults, seed: Number(seed) };
    case 'modbus': {
      const lines = registers.split('\n').filter((line) => line.trim() !== '');
      const read = lines.map((line) => registerOf(line));
      const bad = read.indexOf(undefined);
      if (bad >= 0)
        return `Line ${bad + 1} of the registers, “${lines[bad]}”, is not read: write name, address, type and factor, such as arc voltage [V], 0, uint16, 0.1`;
      if (read.length === 0) return 'Name at least one register.';
      return {
        kind,
        host: host.trim(),
        port: Number(port),
        unit: Number(unit),
        interval_ms: Number(interval),
        registers: read.flatMap((each) => (each === undefined ? [] : [each])),
      };
    }
  }
}

type Register = Extract<Source, { kind: 'modbus' }>['registers'][number];

const TYPES = ['uint16', 'int16', 'uint32', 'int32', 'float32'] as const;

function registerOf(line: string): Register | undefined {
  const [name = '', address = '', type = 'uint16', factor = '1'] = line.split(',').map((part) => part.trim());
  const kept = TYPES.find((each) => each === type);
  const scale = Number(factor);
  if (name === '' || !/^\d+$/u.test(address) || kept === undefined || !Number.isFinite(scale))
    return undefined;
  return { name, address: Number(address), type: kept, scale };
}
