import { createHash, randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  type BackupReport,
  type Company,
  type Originals,
  openCompany,
  openOriginals,
  restoreCompany,
  type StorePlace,
} from './index.ts';
import { testedKinds } from './testing/place.ts';

const now = (): Date => new Date();
const kinds = testedKinds().filter(({ missing }) => missing === undefined);
const pairs = kinds.flatMap((from) => kinds.map((to) => ({ from, to })));

let folder: string;
beforeAll(() => {
  for (const kind of kinds) kind.start();
});
afterAll(() => {
  for (const kind of kinds) kind.stop();
});
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'furrow-backup-'));
  return () => rmSync(folder, { recursive: true });
});

const originalsIn =
  (name: string) =>
  (shop: string): Originals =>
    openOriginals(join(folder, name, shop), now);
async function* bytes(text: string): AsyncGenerator<Uint8Array> {
  yield Buffer.from(text);
}

/** A company with something of everything; the identifier of a live run. */
async function filled(company: Company, originals: Originals, saves = 3): Promise<string> {
  const store = company.shop('yard').by({ id: 'a', name: 'Ada' });
  await company.people.putShop({ id: 'yard', name: 'Yard' });
  await company.people.addAccount({ id: 'a', name: 'Ada', administrator: true });
  await company.people.setRights('a', { administrator: true, shut: false, shops: { yard: 'engineer' } });
  await company.people.setPassword('a', 'scrypt$17$…');
  await company.people.addSession('h', 'a', 'yard', '2099-01-01T00:00:00.000Z');
  await company.people.bindIdentity('https://id.example', 's-1', 'a');
  await company.people.addMachine({ id: 'm', shop: 'yard', name: 'logger' }, 'hash');
  const { id } = await store.create({ text: 'title: Шов № 7\n', title: 'Шов', revision: 'r' });
  for (let number = 1; number < saves; number++)
    await store.save(id, { text: `title: ${number}`, title: '', revision: null }, number);
  await store.kit.save({ text: 'kit', title: 'k', revision: null }, 0);
  await store.faultCases.put({ id: 'f', cause: 'wet_air', symptoms: { seen: 'yes' } });
  await store.printed.add(id, { ...PAPER, revision_number: 1 });
  const { sha256, bytes: length } = await originals.put(bytes('t,U\n0,1\n'.repeat(9)));
  await originals.putParquet(sha256, bytes('PAR1'));
  const measured = await originals.put(bytes('x;z'));
  await store.readings.save(id, { text: `file: ${measured.sha256}`, title: '', revision: null }, 0);
  const run = { name: 'r', revision_number: 1, kit_number: null, knowledge_number: null, logger: null };
  await store.runs.add(id, {
    ...{ ...run, id: randomUUID(), rehearsal: false, source: null },
    original: { sha256, bytes: length },
  });
  const live = randomUUID();
  await store.runs.add(id, { ...run, id: live, rehearsal: false, source: '{"kind":"http"}', original: null });
  mkdirSync(join(originals.folder, 'live'), { recursive: true });
  writeFileSync(join(originals.folder, 'live', `${live}.jsonl`), '{"U":30}\n');
  return live;
}
const PAPER = { paper: 'x.pdf', revision: 'r', kit_revision: null, knowledge_id: null };

async function backedUp(company: Company, originalsOf: (shop: string) => Originals, path: string) {
  const lines = company.backup({ originalsOf, version: '0.1.0' });
  const texts: string[] = [];
  for (;;) {
    const next = await lines.next();
    if (next.done === true) {
      writeFileSync(path, gzipSync(texts.join('')));
      return next.value satisfies BackupReport;
    }
    texts.push(next.value);
  }
}

async function everything(company: Company): Promise<unknown> {
  const store = company.shop('yard');
  const [job] = await store.list();
  return [
    await company.people.shops(),
    await company.people.accounts(),
    await company.people.machines(),
    await company.people.accountNamed('ada'),
    await company.people.identified('https://id.example', 's-1'),
    job,
    await store.revisions(job!.id),
    await store.kit.get(),
    await store.readings.get(job!.id),
    await store.printed.list(job!.id),
    await store.runs.list(job!.id),
    await store.faultCases.list(),
    await store.history.list({ limit: 1000 }),
    await company.history.list({ limit: 1000 }),
  ];
}

describe.each(pairs)('a backup from $from.name to $to.name', ({ from, to }) => {
  it('brings back everything but who is signed in, with all files, and the history agrees', async () => {
    const company = await openCompany(from.newPlace(), { now, newId: randomUUID });
    const path = join(folder, 'backup');
    // more than one page of rows where it is read, once for each kind
    const saves = from.name === to.name ? 3 : 210;
    const live = await filled(company, originalsIn('from')('yard'), saves);
    const report = await backedUp(company, originalsIn('from'), path);
    const before = await everything(company);
    await company.close();
    expect(report).toMatchObject({
      files: 4,
      missing: [],
      rows: { document_revision: saves + 2, account: 1 },
    });
    const place = to.newPlace();
    const restored = await restoreCompany(path, place, originalsIn('to'), now);
    expect(restored).toMatchObject({ files: 4, rows: report.rows, program_version: '0.1.0' });
    const again = await openCompany(place, { now, newId: randomUUID });
    try {
      expect(await everything(again)).toEqual(before);
      expect(await again.people.session('h')).toBeUndefined();
      expect((await again.audit()).problems).toEqual([]);
      const [run] = (await again.shop('yard').runs.list((await again.shop('yard').list())[0]!.id)) ?? [];
      const files = originalsIn('to')('yard');
      for (const each of [run, ...((await again.shop('yard').runs.list(run!.job_id)) ?? [])])
        if (each?.original != null) {
          expect(await files.bytes(each.original.sha256)).toBe(each.original.bytes);
          expect(readFileSync(files.parquetPath(each.original.sha256), 'utf8')).toBe('PAR1');
        }
      expect(readFileSync(join(files.folder, 'live', `${live}.jsonl`), 'utf8')).toBe('{"U":30}\n');
      // the history is locked again, and goes on
      await again.shop('yard').kit.save({ text: 'kit 2', title: '', revision: null }, 1);
      expect((await again.audit()).problems).toEqual([]);
    } finally {
      await again.close();
    }
    await expect(restoreCompany(path, place, originalsIn('to'), now)).rejects.toThrow('already');
  });
});

describe('a backup', () => {
  let path: string;
  let place: StorePlace;
  let lines: string[];
  beforeEach(async () => {
    const company = await openCompany({ folder: join(folder, 'data') }, { now, newId: randomUUID });
    await filled(company, originalsIn('from')('yard'));
    path = join(folder, 'backup');
    await backedUp(company, originalsIn('from'), path);
    await company.close();
    place = { folder: join(folder, 'new') };
    lines = gunzipSync(readFileSync(path)).toString().trimEnd().split('\n');
  });
  const restore = () => restoreCompany(path, place, originalsIn('to'), now);
  const write = (texts: readonly string[], sealed = false): void => {
    const body = texts.slice(0, -1).map((text) => `${text}\n`);
    const sha256 = createHash('sha256').update(body.join('')).digest('hex');
    const end = sealed ? JSON.stringify({ end: { lines: body.length, sha256 } }) : texts.at(-1);
    writeFileSync(path, gzipSync(`${body.join('')}${end}\n`));
  };
  const nothingKept = async (): Promise<void> => {
    const company = await openCompany(place, { now, newId: randomUUID });
    expect([await company.people.accounts(), await company.shop('yard').list()]).toEqual([[], []]);
    await company.close();
  };

  it('that was changed, cut short, damaged, or is none, is refused and leaves nothing', async () => {
    const bytesOf = readFileSync(path);
    write(lines.map((line) => line.replace('wet_air', 'dry_air')));
    await expect(restore()).rejects.toThrow('damaged or changed');
    write([...lines.slice(0, 5), lines.at(-1)!]);
    await expect(restore()).rejects.toThrow('damaged or changed');
    writeFileSync(path, gzipSync(`${lines.slice(0, -1).join('\n')}\n`));
    await expect(restore()).rejects.toThrow('its end is missing');
    writeFileSync(path, bytesOf.subarray(0, bytesOf.length - 100));
    await expect(restore()).rejects.toThrow('cannot be read');
    writeFileSync(path, 'no gzip');
    await expect(restore()).rejects.toThrow('cannot be read');
    writeFileSync(path, gzipSync('{"a":1}\n'));
    await expect(restore()).rejects.toThrow('no backup that Furrow wrote');
    await nothingKept();
  });

  it('that was changed and sealed anew leads out of no folder, knows no other table and fails the audit', async () => {
    const renamed = (name: string): string[] =>
      lines.map((line) =>
        line.startsWith('{"file":"live"') ? line.replace(/"name":"[^"]*"/u, `"name":"${name}"`) : line,
      );
    write(renamed('../../../../escaped'), true);
    await expect(restore()).rejects.toThrow('that cannot be');
    expect(existsSync(join(folder, '..', 'escaped.jsonl'))).toBe(false);
    write(
      lines.map((line) => line.replace('"shop":"yard","name"', '"shop":"../yard","name"')),
      true,
    );
    await expect(restore()).rejects.toThrow('that cannot be');
    write(
      lines.map((line) => line.replace('"table":"machine"', '"table":"session"')),
      true,
    );
    await expect(restore()).rejects.toThrow('not known here');
    await nothingKept();
    write(
      lines.map((line) => line.replace('wet_air', 'dry_air')),
      true,
    );
    await restore();
    const company = await openCompany(place, { now, newId: randomUUID });
    expect((await company.audit()).problems).toEqual([
      'fault f of the shop “yard” is not what the history says.',
    ]);
    await company.close();
  });

  it('of a later version is refused', async () => {
    write(
      lines.map((line, index) => (index === 0 ? line.replace('"steps":[', '"steps":["later",') : line)),
      true,
    );
    await expect(restore()).rejects.toThrow('step “later”');
  });

  it('is consistent though somebody saves meanwhile, and tells of files that are gone', async () => {
    const company = await openCompany({ folder: join(folder, 'data') }, { now, newId: randomUUID });
    const store = company.shop('yard');
    const [job] = await store.list();
    const original = (await store.runs.list(job!.id))?.find((run) => run.original !== null)?.original;
    rmSync(originalsIn('from')('yard').path(original!.sha256));
    const lines = company.backup({ originalsOf: originalsIn('from'), version: '0.1.0' });
    const texts: string[] = [];
    let report: BackupReport | undefined;
    let number = job!.revision_number;
    while (report === undefined) {
      const next = await lines.next();
      if (next.done === true) report = next.value;
      else {
        texts.push(next.value);
        if (number < job!.revision_number + 5)
          await store.save(job!.id, { text: `meanwhile ${number}`, title: '', revision: null }, number++);
      }
    }
    await company.close();
    expect(report.missing).toEqual([expect.stringContaining(original!.sha256)]);
    expect(texts.join('')).not.toContain('meanwhile');
    writeFileSync(path, gzipSync(texts.join('')));
    await restore();
    const again = await openCompany(place, { now, newId: randomUUID });
    expect((await again.audit()).problems).toEqual([]);
    await again.close();
  });
});
