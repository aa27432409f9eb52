import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** Name under which a build hands out its service worker: it stays, so that the browser finds the next one. */
export const SERVICE_WORKER = 'service-worker';

/** A browser that knows service workers takes the smaller kind of font. */
const NEVER_ASKED = /\.woff$/u;

/** Tells the service worker which files this build is made of, those of `folder` included, and names the build by all their content. */
export function offlineBuild(folder: string): Plugin {
  return {
    name: 'furrow-offline',
    apply: 'build',
    generateBundle: {
      // after the page itself is written
      order: 'post',
      handler(_options, bundle) {
        const contents = new Map<string, string | Uint8Array>();
        for (const file of readdirSync(folder)) contents.set(file, readFileSync(join(folder, file)));
        for (const file of Object.values(bundle))
          contents.set(file.fileName, file.type === 'chunk' ? file.code : file.source);
        const worker = bundle[`${SERVICE_WORKER}.js`];
        if (worker?.type !== 'chunk' || worker.imports.length > 0)
          throw new Error('the service worker is one file of its own');
        contents.delete(worker.fileName);
        const files = [...contents.keys()].filter((file) => !NEVER_ASKED.test(file)).toSorted();
        const hash = createHash('sha256').update(worker.code);
        for (const file of files) hash.update(file).update(contents.get(file) ?? '');
        const build = { id: hash.digest('hex').slice(0, 16), files: files.map((file) => `/${file}`) };
        const told = worker.code.replaceAll('FURROW_BUILD', () => `(${JSON.stringify(build)})`);
        if (told === worker.code) throw new Error('the service worker asks for no build');
        worker.code = told;
      },
    },
  };
}
