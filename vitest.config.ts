import { defaultServerConditions } from 'vite';
import { defineConfig } from 'vitest/config';
import { plantMutant } from './tools/plant-mutant.mjs';

// Packages of this workspace are tested from their sources, not from what was last built.
const conditions = ['furrow-source', ...defaultServerConditions];
const sources = { plugins: [plantMutant()], resolve: { conditions }, ssr: { resolve: { conditions } } };
// A worker loads each source once for all its test files: nothing here keeps a state between calls, and what a test stubs it
// puts back. A fresh worker for every file took half of the whole time.
const shared = { isolate: false };

/** Each kind of test is a project of its own, so that one can be run alone: `npx vitest run --project unit`. */
export default defineConfig({
  test: {
    // every core: tests wait for nothing but the machine
    maxWorkers: '100%',
    projects: [
      {
        ...sources,
        test: {
          ...shared,
          name: 'unit',
          // not a measure of speed: several suites share two cores, and planning in earnest takes its time there
          testTimeout: 60_000,
          include: ['packages/*/src/**/*.test.ts', 'packages/*/src/**/*.test.tsx', 'tools/**/*.test.ts'],
          exclude: ['**/*.property.test.ts', '**/node_modules/**'],
        },
      },
      {
        ...sources,
        test: {
          ...shared,
          name: 'property',
          include: ['packages/*/src/**/*.property.test.ts'],
          testTimeout: 60_000,
        },
      },
      {
        ...sources,
        test: { ...shared, name: 'published', include: ['published/**/*.test.ts'], testTimeout: 60_000 },
      },
      {
        ...sources,
        test: {
          ...shared,
          name: 'e2e',
          include: ['e2e/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // one browser for all files, which run side by side
          globalSetup: ['e2e/shared-browser.ts'],
        },
      },
    ],
  },
});
