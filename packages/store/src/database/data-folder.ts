import { homedir, platform } from 'node:os';
import { posix, win32 } from 'node:path';

/** What the place of the data depends on. */
export interface Surroundings {
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  readonly home: string;
}

/**
 * The folder that saved jobs live in: FURROW_DATA if set, else where this platform keeps a user's data.
 * A relative XDG_DATA_HOME or LOCALAPPDATA is not taken: it would mean another folder in each shell.
 */
export function dataFolder(around: Surroundings = hereAndNow()): string {
  const { environment, home } = around;
  const path = around.platform === 'win32' ? win32 : posix;
  const asked = environment['FURROW_DATA'];
  if (asked !== undefined && asked !== '') return path.resolve(asked);
  if (around.platform === 'win32') {
    return path.join(
      absolute(environment['LOCALAPPDATA'], path) ?? path.join(home, 'AppData', 'Local'),
      'Furrow',
    );
  }
  if (around.platform === 'darwin') return path.join(home, 'Library', 'Application Support', 'Furrow');
  return path.join(
    absolute(environment['XDG_DATA_HOME'], path) ?? path.join(home, '.local', 'share'),
    'furrow',
  );
}

function absolute(folder: string | undefined, path: typeof posix): string | undefined {
  return folder !== undefined && path.isAbsolute(folder) ? folder : undefined;
}

function hereAndNow(): Surroundings {
  return { environment: process.env, platform: platform(), home: homedir() };
}
