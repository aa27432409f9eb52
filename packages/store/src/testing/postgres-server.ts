import { execFileSync, type SpawnSyncOptions } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A PostgreSQL server of a test's own, reachable by its socket only. */
export interface PostgresServer {
  /** URL of an empty database, which keeps text as UTF8 unless told otherwise. */
  readonly newDatabase: (encoding?: string) => string;
  readonly stop: () => void;
}

/** Folder of the newest PostgreSQL server installed here, or why there is none to test with. */
export function findPostgres(): { readonly binaries: string } | { readonly missing: string } {
  const root = '/usr/lib/postgresql';
  const versions = existsSync(root) ? readdirSync(root).sort((a, b) => Number(b) - Number(a)) : [];
  const found = versions
    .map((version) => join(root, version, 'bin'))
    .find((bin) => existsSync(join(bin, 'initdb')));
  if (found === undefined) return { missing: `no PostgreSQL server found in ${root}` };
  if (process.getuid?.() === 0 && userNamed('postgres') === undefined) {
    return { missing: 'PostgreSQL refuses to run as root and there is no user “postgres”' };
  }
  return { binaries: found };
}

/** Starts a server in a temporary folder. Its data is thrown away, so it need not wait for the disk. */
export function startPostgres(binaries: string): PostgresServer {
  const user = process.getuid?.() === 0 ? userNamed('postgres') : undefined;
  const folder = mkdtempSync(join(tmpdir(), 'furrow-pg-'));
  if (user !== undefined) chownSync(folder, user.uid, user.gid);
  const options: SpawnSyncOptions = { cwd: folder, stdio: 'ignore', ...user };
  const run = (program: string, ...parts: string[]): void => {
    execFileSync(join(binaries, program), parts, options);
  };
  const data = join(folder, 'data');
  run('initdb', '-D', data, '-U', 'furrow', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync');
  const settings = `-k ${folder} -c listen_addresses='' -c fsync=off`;
  run('pg_ctl', '-D', data, '-w', '-l', join(folder, 'log'), '-o', settings, 'start');
  let databases = 0;
  return {
    newDatabase: (encoding = 'UTF8') => {
      const name = `test${++databases}`;
      run('createdb', '-h', folder, '-U', 'furrow', '-E', encoding, '-T', 'template0', name);
      return `postgresql:///${name}?host=${folder}&user=furrow`;
    },
    stop: () => {
      run('pg_ctl', '-D', data, '-w', '-m', 'immediate', 'stop');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function userNamed(name: string): { uid: number; gid: number } | undefined {
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((entry) => entry.startsWith(`${name}:`));
  const [, , uid, gid] = line?.split(':') ?? [];
  return uid === undefined || gid === undefined ? undefined : { uid: Number(uid), gid: Number(gid) };
}
