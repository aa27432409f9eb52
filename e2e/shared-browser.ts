import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { findBrowser, launchFlags } from '../tools/find-browser.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the one browser of the run listens; undefined where there is none. */
    readonly browser: string | undefined;
  }
}

/** Starts the one browser that all files of a run drive, each test in a context of its own. */
export default async function shareBrowser(project: TestProject): Promise<() => Promise<void>> {
  const program = findBrowser();
  if (program === undefined) {
    project.provide('browser', undefined);
    return async () => {};
  }
  const server = await chromium.launchServer({ executablePath: program, args: launchFlags() });
  project.provide('browser', server.wsEndpoint());
  return () => server.close();
}
