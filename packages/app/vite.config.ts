import { defaultClientConditions, defineConfig } from 'vite';

/** Packages of this workspace are bundled from their sources, so that a build never takes a stale one. */
export default defineConfig({
  root: import.meta.dirname,
  resolve: { conditions: ['furrow-source', ...defaultClientConditions] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es' },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2023',
    // the page's policy admits files only, so nothing small is turned into a data address
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:4370' } },
});
