import { defineConfig } from 'vitest/config';

const resolve = { conditions: ['furrow-source'] };
const ssr = { resolve: { conditions: ['furrow-source'] } };

/** Each kind of test is a project of its own, so that one can be run alone: `npx vitest run --project unit`. */
export default defineConfig({
  test: {
    projects: [
      {
        resolve,
        ssr,
        test: {
          name: 'unit',
          include: ['packages/*/src/**/*.test.ts', 'packages/*/src/**/*.test.tsx', 'tools/**/*.test.ts'],
          exclude: ['**/*.property.test.ts', '**/node_modules/**'],
        },
      },
      {
        resolve,
        ssr,
        test: { name: 'property', include: ['packages/*/src/**/*.property.test.ts'], testTimeout: 30_000 },
      },
      { resolve, ssr, test: { name: 'published', include: ['published/**/*.test.ts'], testTimeout: 30_000 } },
      {
        resolve,
        ssr,
        test: {
          name: 'e2e',
          include: ['e2e/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
