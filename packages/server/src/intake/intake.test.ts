import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { LogReader } from '@furrow/engine';
import { type Journal, JournalFailure, openJournal } from '@furrow/store';
import { Aedes } from 'aedes';
import mqtt from 'mqtt';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { frameOf } from './frame.ts';
import { httpSource } from './http-intake.ts';
import { Intake } from './intake.ts';
import { LineCutter } from './line-cutter.ts';
import { mqttSource } from './mqtt-source.ts';
import { PacketBound } from './packet-bound.ts';
import type { Source } from './source.ts';

const AT = new Date('2026-11-27T08:00:00.000Z');
let folder = '';
let path = '';
let journal: Journal;
let intake: Intake;
const opened: { close(): unknown }[] = [];

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-intake-'));
  path = join(folder, 'run.jsonl');
  journal = await openJournal(path);
  intake = new Intake(journal, () => AT);
});
afterEach(async () => {
  for (const each of opened.splice(0).reverse()) await each.close();
  await journal.close();
  rmSync(folder, { recursive: true });
});

const kept = (): string[] => readFileSync(path, 'utf8').split('\n').slice(0, -1);

describe('a frame', () => {
  const line = (text: string): string => {
    const frame = frameOf(Buffer.from(text), AT);
    return frame.ok ? Buffer.from(frame.line).toString() : frame.why;
  };

  it('is kept as it came, behind the moment of its arrival', () => {
    expect(line(' {"t": 0.10, "U":41}\n')).toBe(
      '{"arrived_at":"2026-11-27T08:00:00.000Z","t": 0.10, "U":41}\n',
    );
  });

  it.each([
    ['oops', 'no JSON'],
    ['[1]', 'no JSON object'],
    ['{}', 'not 1 to 200 names'],
    ['{"U":true}', '"U" holds something that is no reading'],
    ['{"U":{"a":1}}', '"U" holds something that is no reading'],
    ['{"U":[1,2],"I":[1]}', 'the lists of a frame are not of one length'],
    ['{"U":[]}', 'not 1 to 10000 readings'],
    [`{"U":"${'x'.repeat(70_000)}"}`, 'longer than 64 KiB'],
  ])('%j is refused', (text, why) => {
    expect(line(text)).toBe(why);
  });
});

it('lines are cut in memory bounded by the longest that is wanted', () => {
  const cutter = new LineCutter(5);
  const lines = ['ab', 'c\nlongl', 'onglong', '\nx'].flatMap((piece) => cutter.push(Buffer.from(piece)));
  expect([...lines, ...cutter.end()].map((each) => Buffer.from(each).toString())).toEqual([
    'abc',
    'longlo',
    'x',
  ]);
});

describe('newline JSON over HTTP', () => {
  async function post(source: Source, body: string, type = 'application/x-ndjson') {
    const response = await fetch(source.address, { method: 'POST', body, headers: { 'content-type': type } });
    return { status: response.status, told: await response.json() };
  }

  it('is on disk when it is answered, and what is refused is named by its line', async () => {
    const source = await httpSource(intake, 0);
    opened.push(source);
    const { status, told } = await post(source, '{"t":0,"U":41}\noops\n\n{"t":[0.1,0.2],"U":[41,42]}');
    expect(status).toBe(200);
    expect(told).toEqual({ kept: 2, refused: [{ line: 2, why: 'no JSON' }], refused_count: 1 });
    expect(kept()).toHaveLength(2);
    expect(intake.count).toMatchObject({ frames: 2, readings: 3, refused: 1, lastRefusal: 'no JSON' });
    const reader = new LogReader();
    const early = reader.push(readFileSync(path));
    const outcome = reader.end();
    if (!outcome.ok) throw new Error(outcome.issues[0]!.message);
    const time = [...early, ...outcome.value.batches].flatMap(({ time_s }) => [...time_s]);
    expect(time).toEqual([0, 0.1, 0.2]);
  });

  it('is taken as JSON by POST alone', async () => {
    const source = await httpSource(intake, 0);
    opened.push(source);
    expect((await post(source, '{"U":1}', 'text/plain')).status).toBe(415);
    expect((await fetch(source.address)).status).toBe(405);
    expect(kept()).toEqual([]);
  });

  it('is answered by a full disk with what to do, and nothing is acknowledged', async () => {
    const full = new Intake(
      {
        add: () =>
          Promise.reject(new JournalFailure('run', Object.assign(new Error('no'), { code: 'ENOSPC' }))),
      } as unknown as Journal,
      () => AT,
    );
    const source = await httpSource(full, 0);
    opened.push(source);
    const { status, told } = await post(source, '{"U":41}\n');
    expect(status).toBe(507);
    expect(told.message).toContain('The disk is full');
    expect(full.count.frames).toBe(0);
  });
});

describe('an MQTT broker', () => {
  const TOPIC = 'rig/4/readings';

  async function broker(): Promise<{
    url: string;
    publish: (topic: string, payload: string) => Promise<unknown>;
    stop: () => Promise<void>;
    aedes: Aedes;
  }> {
    const aedes = await Aedes.createBroker();
    const server: Server = createServer(aedes.handle);
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    const { port } = server.address() as { port: number };
    const url = `mqtt://127.0.0.1:${port}`;
    const publisher = await mqtt.connectAsync(url);
    const stop = async (): Promise<void> => {
      await publisher.endAsync(true);
      await new Promise<void>((done) => aedes.close(() => done()));
      await new Promise<void>((done) => server.close(() => done()));
    };
    return {
      url,
      publish: (topic, payload) => publisher.publishAsync(topic, payload, { qos: 1 }),
      stop,
      aedes,
    };
  }

  /** Waits for what the intake has to say or to count. */
  async function until(holds: () => boolean): Promise<void> {
    await expect.poll(holds, { timeout: 20_000, interval: 10 }).toBe(true);
  }

  it('hands readings over that are on disk before it is told so, also those that came while nobody listened', async () => {
    const { url, publish, stop } = await broker();
    opened.push({ close: stop });
    const said: string[] = [];
    const place = { url, topic: TOPIC, clientId: 'furrow-rig-4' };
    const first = await mqttSource(intake, place, (what) => said.push(what));
    await until(() => said.some((what) => what.startsWith('connected')));
    await publish(TOPIC, '{"t":0,"U":41}');
    await until(() => intake.count.frames === 1);
    await first.close();
    await publish(TOPIC, '{"t":1,"U":42}');
    const second = await mqttSource(intake, place, () => undefined);
    opened.push(second);
    await until(() => intake.count.frames === 2);
    expect(kept().map((each) => JSON.parse(each).U)).toEqual([41, 42]);
  });

  it('that sends wrong types or another rig is counted, and harms nothing', async () => {
    const { url, publish, stop, aedes } = await broker();
    opened.push({ close: stop });
    const source = await mqttSource(intake, { url, topic: TOPIC, clientId: 'furrow-rig-4' }, () => undefined);
    opened.push(source);
    await until(() => aedes.connectedClients === 2);
    for (const payload of ['oops', '{"U":{"a":1}}', '']) await publish(TOPIC, payload);
    await publish('rig/5/readings', '{"U":1}');
    await publish(TOPIC, '{"t":1,"U":42}');
    await until(() => intake.count.frames === 1);
    expect(intake.count.refused).toBe(3);
    expect(kept()).toHaveLength(1);
  });

  it('that sends a huge packet is left before the packet is in memory', async () => {
    const server = createServer((socket) => {
      socket.on('error', () => undefined);
      socket.once('data', () => {
        // accepted; then a message that says it is 200 MB long
        socket.write(Buffer.from([0x20, 2, 0, 0, 0x32, 0x80, 0x88, 0xaf, 0x5f]));
        socket.write(Buffer.alloc(200_000, 1));
      });
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    opened.push({ close: () => new Promise<void>((done) => server.close(() => done())) });
    const { port } = server.address() as { port: number };
    const said: string[] = [];
    const source = await mqttSource(
      intake,
      { url: `mqtt://127.0.0.1:${port}`, topic: TOPIC, clientId: 'c' },
      (what) => said.push(what),
    );
    opened.push(source);
    await until(() => said.some((what) => what.includes('longer than')));
    expect(intake.count.frames).toBe(0);
  });
});

it('the bound follows packets over pieces of any size', () => {
  const packets = Buffer.concat([
    Buffer.from([0x20, 2, 0, 0]),
    Buffer.from([0x30, 0x80, 0x01]),
    Buffer.alloc(128),
    Buffer.from([0xd0, 0]),
  ]);
  for (const size of [1, 3, 200]) {
    const bound = new PacketBound(128);
    for (let at = 0; at < packets.length; at += size)
      expect(bound.holds(packets.subarray(at, at + size))).toBe(true);
    expect(bound.holds(Buffer.from([0x30, 0x80]))).toBe(true);
    expect(bound.holds(Buffer.from([0x02]))).toBe(false);
  }
});
