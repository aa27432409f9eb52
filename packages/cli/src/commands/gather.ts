import { hostname } from 'node:os';
import { httpSource, Intake, modbusSource, mqttSource, type Source } from '@furrow/server/intake';
import { type Journal, JournalFailure, openJournal } from '@furrow/store';
import { badInput, type Run, type Told } from '../frame/command.ts';
import type { Streams } from '../frame/streams.ts';
import { modbusPlace } from './modbus-place.ts';

interface GatherOptions {
  /** File to which the readings are added. */
  readonly output: string;
  /** Topic of the rig on an MQTT broker. */
  readonly topic?: string;
  /** Name under which the broker keeps what comes meanwhile. */
  readonly clientId?: string;
  /** Registers of a device, as they are written. */
  readonly register?: readonly string[];
  /** Time between two readings of registers [ms]. */
  readonly every?: string;
  readonly json: boolean;
}

/** How often it is told what has come in [ms]. */
const TOLD_EVERY = 1000;

/** Takes readings as they come and has each on disk before it is acknowledged, until the source ends or it is stopped. */
export const run: Run<GatherOptions> = async ([from = '-'], options, streams) => {
  let journal: Journal;
  try {
    journal = await openJournal(options.output);
  } catch (error) {
    if (!(error instanceof JournalFailure)) throw error;
    return badInput([error.message]);
  }
  const before = journal.length;
  try {
    const told =
      from === '-' ? await gatherInput(journal) : await gatherFrames(from, journal, options, streams);
    if (told !== undefined) return told;
  } finally {
    await journal.close();
  }
  const bytes = journal.length - before;
  return {
    exit: 0,
    print: options.json
      ? JSON.stringify({ file: options.output, bytes }, null, 2)
      : `${bytes} bytes added to ${options.output}.`,
  };
};

/** Keeps what any program writes to standard input as it is, byte for byte. */
async function gatherInput(journal: Journal): Promise<Told | undefined> {
  try {
    for await (const piece of process.stdin) await journal.add(piece as Buffer);
    return undefined;
  } catch (error) {
    if (!(error instanceof JournalFailure)) throw error;
    return badInput([error.message]);
  }
}

/** Keeps frames of readings from a source that waits to have each acknowledged. */
async function gatherFrames(
  from: string,
  journal: Journal,
  options: GatherOptions,
  streams: Streams,
): Promise<Told | undefined> {
  const intake = new Intake(journal, () => new Date());
  const source = await open(from, intake, options, streams);
  if ('exit' in source) return source;
  streams.problem([`Readings are taken from ${source.address}; stop with Ctrl-C.`]);
  const teller = setInterval(() => streams.progress?.(countWords(intake)), TOLD_EVERY);
  await new Promise<void>((stopped) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stopped());
  });
  clearInterval(teller);
  await source.close();
  streams.progress?.('');
  streams.problem([countWords(intake)]);
  return undefined;
}

function countWords({ count }: Intake): string {
  const { frames, readings, refused, lastRefusal, lastAt } = count;
  const age =
    lastAt === undefined ? 'none yet' : `the last ${((Date.now() - lastAt) / 1000).toFixed(1)} s ago`;
  const not = refused === 0 ? '' : `; ${refused} refused, the last as ${lastRefusal}`;
  return `${readings} readings in ${frames} frames on disk, ${age}${not}`;
}

async function open(
  from: string,
  intake: Intake,
  options: GatherOptions,
  streams: Streams,
): Promise<Source | Told> {
  const url = URL.canParse(from) ? new URL(from) : undefined;
  if (url?.protocol === 'http:') {
    if (!['127.0.0.1', 'localhost'].includes(url.hostname))
      return badInput(['Readings are listened for on this computer alone: http://127.0.0.1:PORT']);
    try {
      return await httpSource(intake, Number(url.port || 0));
    } catch (error) {
      return badInput([
        `Port ${url.port} cannot be listened on: ${error instanceof Error ? error.message : ''}`,
      ]);
    }
  }
  if (url?.protocol === 'mqtt:' || url?.protocol === 'mqtts:') {
    const { topic, clientId = `furrow-${hostname()}` } = options;
    if (topic === undefined || /[+#]/u.test(topic))
      return badInput(['An MQTT broker is asked for one topic, without + and #: --topic rig/4/readings']);
    const password = process.env['FURROW_BROKER_PASSWORD'];
    // what stands in a command can be read by everybody on this computer
    if (password !== undefined && url.password === '') url.password = encodeURIComponent(password);
    return mqttSource(intake, { url: url.href, topic, clientId }, (what) => streams.problem([what]));
  }
  if (url?.protocol === 'modbus:') {
    const place = modbusPlace(url, options.register ?? [], options.every);
    if (typeof place === 'string') return badInput([place]);
    return modbusSource(intake, place, (what) => streams.problem([what]));
  }
  return badInput([
    `"${from.slice(0, 80)}" is no source of readings. Accepted: - for standard input, http://127.0.0.1:PORT to listen for newline JSON, mqtt://BROKER or mqtts://BROKER with --topic, modbus://HOST with --register.`,
  ]);
}
