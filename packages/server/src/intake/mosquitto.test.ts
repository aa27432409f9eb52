import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { connect as connectSocket, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Journal, openJournal } from '@furrow/store';
import mqtt from 'mqtt';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Intake } from './intake.ts';
import { mqttSource } from './mqtt-source.ts';

const PROGRAM = ['mosquitto', '/usr/sbin/mosquitto'].find(
  (name) => spawnSync(name, ['-h'], { stdio: 'ignore' }).error === undefined,
);

/** Waits, a turn of the loop at a time. */
async function until(met: () => boolean): Promise<void> {
  while (!met()) await new Promise((done) => setImmediate(done));
}

describe.skipIf(PROGRAM === undefined)('the mosquitto broker', () => {
  const folder = mkdtempSync(join(tmpdir(), 'furrow-mosquitto-'));
  const path = join(folder, 'run.jsonl');
  let broker: ChildProcess;
  let journal: Journal;
  let url = '';

  beforeAll(async () => {
    const free = createServer();
    await new Promise<void>((done) => free.listen(0, '127.0.0.1', () => done()));
    const { port } = free.address() as { port: number };
    await new Promise((done) => free.close(done));
    url = `mqtt://127.0.0.1:${port}`;
    const settings = join(folder, 'mosquitto.conf');
    writeFileSync(settings, `listener ${port} 127.0.0.1\nallow_anonymous true\n`);
    broker = spawn(PROGRAM ?? '', ['-c', settings], { stdio: 'ignore' });
    for (;;) {
      const heard = await new Promise<boolean>((tell) => {
        const socket = connectSocket(port, '127.0.0.1');
        socket.once('connect', () => tell(true)).once('error', () => tell(false));
        socket.once('connect', () => socket.destroy());
      });
      if (heard) break;
    }
    journal = await openJournal(path);
  });
  afterAll(async () => {
    await journal.close();
    const ended = new Promise((done) => broker.once('close', done));
    broker.kill();
    await ended;
    rmSync(folder, { recursive: true });
  });

  it('keeps for the same client what comes while it is away, and hands on nothing of another rig', async () => {
    const place = { url, topic: 'rig/4/readings', clientId: 'furrow-test' };
    const told: string[] = [];
    const listen = () => {
      const intake = new Intake(journal, () => new Date());
      return mqttSource(intake, place, (what) => told.push(what)).then((source) => ({ intake, source }));
    };
    const rig = await mqtt.connectAsync(url);
    const send = (n: number, topic = place.topic) => rig.publishAsync(topic, `{"t":${n}}`, { qos: 1 });
    const first = await listen();
    // what is sent before the broker has the subscription is nobody's: the first is sent until it comes
    for (let n = 0; first.intake.count.frames === 0; n += 1) {
      await send(0);
      await until(() => first.intake.count.frames > 0 || n < 50);
    }
    await send(1);
    await send(9, 'rig/5/readings');
    const times = (): number[] => [
      ...new Set(
        readFileSync(path, 'utf8')
          .trim()
          .split('\n')
          .map((line) => JSON.parse(line).t as number),
      ),
    ];
    await until(() => times().includes(1));
    await first.source.close();
    await send(2);
    await send(3);
    const second = await listen();
    await send(4);
    await until(() => times().includes(4));
    expect(times()).toEqual([0, 1, 2, 3, 4]);
    await second.source.close();
    await rig.endAsync();
  });
});
