import { join } from 'node:path';
import { defaultClientConditions, defineConfig, type Plugin } from 'vite';
import { readHandbook } from '../../tools/handbook.ts';
import { offlineBuild, SERVICE_WORKER } from './offline-build.ts';

/** Puts the handbook, read out of the engine's doc comments, beside the app: what it says cannot be older than the code. */
function handbook(): Plugin {
  return {
    name: 'furrow-handbook',
    apply: 'build',
    generateBundle() {
      const rooms = readHandbook(join(import.meta.dirname, '..', '..'));
      this.emitFile({ type: 'asset', fileName: 'handbook.json', source: JSON.stringify(rooms) });
    },
  };
}

/** Packages of this workspace are bundled from their sources, so that a build never takes a stale one. */
export default defineConfig({
  root: import.meta.dirname,
  resolve: { conditions: ['furrow-source', ...defaultClientConditions] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [handbook(), offlineBuild(join(import.meta.dirname, 'public'))],
  worker: { format: 'es' },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2023',
    // the page's policy admits files only, so nothing small is turned into a data address
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: {
        index: join(import.meta.dirname, 'index.html'),
        [SERVICE_WORKER]: join(import.meta.dirname, 'src', 'service-worker.ts'),
      },
      output: {
        entryFileNames: ({ name }) =>
          name === SERVICE_WORKER ? `${SERVICE_WORKER}.js` : 'assets/[name]-[hash].js',
      },
    },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:4370' } },
});
