import { connect, type Socket } from 'node:net';
import { JournalFailure } from '@furrow/store';
import type { Intake } from './intake.ts';
import { type ModbusRegister, registerBlocks, registerValue } from './modbus-registers.ts';
import type { Source } from './source.ts';

/** Which registers of which device are read, and how often. */
export interface ModbusPlace {
  readonly host: string;
  readonly port: number;
  /** Number of the device behind that address [-]. */
  readonly unit: number;
  /** Time between two readings [ms]. */
  readonly interval: number;
  readonly registers: readonly ModbusRegister[];
}

/** How long is waited for a connection and for an answer, and before another try [ms]. */
const PATIENCE = 2000;
const TRY_AGAIN = 1000;

/**
 * Reads registers over Modbus TCP at a steady pace, a frame for each reading. A device that does not answer, or refuses,
 * is told of and asked again; what it did not say is a gap, never a number.
 */
export async function modbusSource(
  intake: Intake,
  { host, port, unit, interval, registers }: ModbusPlace,
  tell: (what: string) => void,
): Promise<Source> {
  // loaded where it is used: most gather from elsewhere
  const { ModbusTCPClient } = await import('jsmodbus');
  const blocks = registerBlocks(registers);
  const name = `${host}:${port}`;
  let closed = false;
  let socket: Socket | undefined;
  let timer: NodeJS.Timeout | undefined;
  let wake = (): void => undefined;

  const pause = (milliseconds: number): Promise<void> =>
    new Promise((done) => {
      wake = done;
      timer = setTimeout(done, milliseconds);
    });
  const connected = async (): Promise<InstanceType<typeof ModbusTCPClient>> => {
    const fresh = connect({ host, port });
    socket = fresh;
    // before it is connected: the client waits to be told
    const client = new ModbusTCPClient(fresh, unit, PATIENCE);
    await new Promise<void>((done, fail) => {
      fresh.setTimeout(PATIENCE, () => fresh.destroy(new Error('it does not answer')));
      fresh.once('connect', done);
      fresh.once('error', fail);
      fresh.once('close', () => fail(new Error('the connection was closed')));
    });
    fresh.setTimeout(0);
    return client;
  };
  const readOnce = async (client: InstanceType<typeof ModbusTCPClient>): Promise<void> => {
    const values = new Map<ModbusRegister, number | null>();
    for (const { table, start, count, registers: within } of blocks) {
      const { response } = await (table === 'holding'
        ? client.readHoldingRegisters(start, count)
        : client.readInputRegisters(start, count));
      const bytes = response.body.valuesAsBuffer;
      if (bytes.length < 2 * count) throw new Error(`it sent ${bytes.length / 2} registers of ${count}`);
      for (const each of within) values.set(each, registerValue(bytes, start, each));
    }
    const frame = Object.fromEntries(registers.map((each) => [each.name, values.get(each) ?? null]));
    await intake.take(Buffer.from(JSON.stringify(frame)));
  };
  const readOn = async (): Promise<void> => {
    const client = await connected();
    tell(`connected to ${name}`);
    let due = performance.now();
    while (!closed) {
      await readOnce(client);
      const now = performance.now();
      // a reading that took too long leaves a gap: none is made up for it
      due = Math.max(due + interval, now);
      await pause(due - now);
    }
  };
  const run = async (): Promise<void> => {
    while (!closed) {
      try {
        await readOn();
      } catch (error) {
        if (closed) return;
        tell(error instanceof JournalFailure ? error.message : `${name}: ${reasonOf(error)}; trying again`);
      } finally {
        socket?.destroy();
      }
      await pause(TRY_AGAIN);
    }
  };
  const running = run();
  return {
    address: `${name}, unit ${unit}`,
    close: async () => {
      closed = true;
      clearTimeout(timer);
      wake();
      socket?.destroy();
      await running;
    },
  };
}

/** The client rejects with a record of its own, in which an exception of the device stands. */
function reasonOf(error: unknown): string {
  if (error instanceof Error) return error.message;
  const { message, err } = (error ?? {}) as { message?: unknown; err?: unknown };
  return (
    [err, message].filter((each) => typeof each === 'string').join(': ') ||
    'it sent no answer that can be read'
  );
}
