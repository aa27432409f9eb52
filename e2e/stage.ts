import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import { type BenchServer, startBench } from './bench-server.ts';
import { rememberAnswers } from './remembered-answers.ts';
import { watchPage } from './watch-page.ts';

const BROWSER = inject('browser');

/** Whether there is no browser to drive; the tests that need one are skipped then. */
export const NO_BROWSER = BROWSER === undefined;

/** How long a page may take over anything [ms]: not a measure of speed, for other tests use the same cores. */
const PATIENCE = 60_000;

/** Screens that the pages are laid out for. */
export const SCREENS = { bench: { width: 1440, height: 900 }, tablet: { width: 820, height: 1180 } } as const;

/** How a visit looks at the page. */
export interface VisitOptions {
  readonly screen?: keyof typeof SCREENS;
  readonly theme?: 'light' | 'dark';
  /** Statuses of the server that the test brings about; any other from 400 on is trouble. */
  readonly expect?: readonly number[];
  /** What the test makes the console say. */
  readonly console?: RegExp;
  /** Whether the page's own workers compute what was answered in an earlier test already. */
  readonly afresh?: boolean;
  /** Whether the browser keeps the app, to open it without the server; costs the loading of all of it. */
  readonly keeps?: boolean;
  /** People who sign in; nobody does where left out. */
  readonly people?: readonly string[];
}

/** One person at a bench of their own. */
export interface Visit {
  readonly page: Page;
  readonly url: string;
  /** Another tab of the same browser. */
  readonly tab: () => Promise<Page>;
  /** The same bench in the browser of somebody else. */
  readonly elsewhere: () => Promise<Page>;
  /** The same address served by another build of the app, over an empty store. */
  readonly served: (app: string) => Promise<void>;
}

/** Gives each test of a file a fresh bench and a fresh browser context, and checks afterwards that nothing went wrong unseen. */
export function useStage(): { readonly visit: (options?: VisitOptions) => Promise<Visit> } {
  let browser: Browser;
  let server: BenchServer | undefined;
  let contexts: BrowserContext[] = [];
  const trouble: string[] = [];

  beforeAll(async () => {
    browser = await chromium.connect(BROWSER ?? '');
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    const told = [...trouble.splice(0), ...(server?.faults ?? [])];
    await Promise.all(contexts.map((context) => context.close()));
    await server?.stop();
    contexts = [];
    server = undefined;
    expect(told).toEqual([]);
  });

  return {
    async visit({
      screen = 'bench',
      theme = 'light',
      expect: statuses = [],
      console: said,
      afresh = false,
      keeps = false,
      people,
    } = {}) {
      server = await startBench(people === undefined ? {} : { people });
      const { url, entry } = server;
      const newContext = async (): Promise<BrowserContext> => {
        const context = await browser.newContext({
          baseURL: url,
          viewport: SCREENS[screen],
          colorScheme: theme,
          acceptDownloads: true,
        });
        contexts.push(context);
        context.setDefaultTimeout(PATIENCE);
        if (!afresh) await rememberAnswers(context);
        // a browser that keeps no app: its pages come from the bench alone
        if (!keeps)
          await context.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'));
        await context.request.get(entry);
        context.on('page', (page) =>
          watchPage(page, { url, statuses, said, tell: (what) => trouble.push(what) }),
        );
        return context;
      };
      const context = await newContext();
      return {
        page: await context.newPage(),
        url,
        tab: () => context.newPage(),
        elsewhere: async () => (await newContext()).newPage(),
        async served(other) {
          await server?.stop();
          server = await startBench({ app: other, port: Number(new URL(url).port) });
          await context.request.get(server.entry);
        },
      };
    },
  };
}
