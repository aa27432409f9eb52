/** A program to be killed: serves the data folder given and prints its address once it listens. */
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { openOriginals, openStore } from '@furrow/store';
import { openWork, startServer } from '../index.ts';

const [folder = '', exampleFolder = ''] = process.argv.slice(2);
const store = await openStore({ folder }, { now: () => new Date(), newId: randomUUID });
const log = (message: string): void => void writeSync(2, `${message}\n`);
const originals = openOriginals(join(folder, 'runs'), () => new Date());
const work = openWork();
const started = await startServer(
  { store, work, background: work, originals, appFolder: undefined, exampleFolder, log },
  0,
);
if (!started.ok) throw new Error(started.issues[0]?.message);
writeSync(1, `${started.value.url}\n`);
