import {
  API_PATHS,
  errorSchema,
  runSummarySchema,
  type ShopFigures,
  shopFiguresSchema,
} from '@furrow/contract';
import type { Company, Store, StoredShop } from '@furrow/store';
import { z } from 'zod';
import type { Work } from '../work/open-work.ts';
import { nobodyWaits } from './nobody-waits.ts';
import type { ZodServer } from './zod-server.ts';

const SECONDS_PER_HOUR = 3600;
const busy = { 503: errorSchema };

/** The company's shops side by side, and what they have learned together. */
export function companyRoutes(
  server: ZodServer,
  company: Pick<Company, 'people' | 'shop'>,
  work: Pick<Work, 'make'>,
): void {
  const known = new Map<string, { readonly of: string; readonly figures: ShopFigures }>();
  const figuresOf = async (shop: StoredShop, signal: AbortSignal): Promise<ShopFigures> => {
    const store = company.shop(shop.id);
    const runs = await store.runs.summaries();
    // whatever is changed in a shop enters its history, but for what a review found
    const reviewed = runs.filter(({ summary }) => summary !== null).length;
    const of = `${await store.history.end()} ${runs.length} ${reviewed} ${shop.name}`;
    const before = known.get(shop.id);
    if (before?.of === of) return before.figures;
    const figures = await workedOut(store, shop, runs, work, signal);
    known.set(shop.id, { of, figures });
    return figures;
  };
  server.get(
    API_PATHS.companyShops,
    {
      schema: {
        summary: 'The shops side by side: jobs, recuts, hours, calibration, drift',
        response: { 200: z.array(shopFiguresSchema), ...busy },
      },
    },
    async (_request, reply) => {
      const signal = nobodyWaits(reply);
      const all: ShopFigures[] = [];
      for (const shop of await company.people.shops()) all.push(await figuresOf(shop, signal));
      return all;
    },
  );
  server.get(
    API_PATHS.companySummary,
    {
      schema: {
        summary: 'What the shops have learned together, as a summary file',
        description:
          'Sufficient statistics of each shop, no reading, setting or job; `furrow … --knowledge` plans with it.',
        response: {
          200: { description: 'The summary file.', content: { 'application/json': { schema: z.string() } } },
          ...busy,
        },
      },
    },
    async (_request, reply) => {
      const trials: string[] = [];
      for (const { id } of await company.people.shops()) {
        const saved = await company.shop(id).knowledge.get();
        if (saved !== undefined && saved.revision !== null) trials.push(saved.text);
      }
      const text = await work.make('companySummary', trials, nobodyWaits(reply));
      return reply
        .type('application/json; charset=utf-8')
        .header('content-disposition', 'attachment; filename="company-summary.json"')
        .serializer(String)
        .send(text);
    },
  );
}

async function workedOut(
  store: Store,
  shop: StoredShop,
  runs: readonly { readonly summary: string | null }[],
  work: Pick<Work, 'make'>,
  signal: AbortSignal,
): Promise<ShopFigures> {
  const jobs = await store.list();
  const readings: string[] = [];
  for (const { id } of jobs) {
    const saved = await store.readings.get(id);
    if (saved != null) readings.push(saved.text);
  }
  const trials = (await store.knowledge.get())?.text;
  const worked = await work.make('figures', { readings, trials }, signal);
  const times = runs.map(({ summary }) => arcTimeOf(summary));
  const told = times.filter((time) => time !== null);
  return {
    shop: { ...shop },
    jobs: jobs.length,
    ...worked,
    runs: runs.length,
    runs_without_arc_time: times.length - told.length,
    arc_h: told.reduce((sum, time) => sum + time, 0) / SECONDS_PER_HOUR,
  };
}

/** Time with the arc burning [s]; null where the log does not tell, or a summary of another version cannot be read. */
function arcTimeOf(summary: string | null): number | null {
  if (summary === null) return null;
  const read = runSummarySchema.safeParse(JSON.parse(summary));
  return read.success ? read.data.totals.arc_time_s : null;
}
