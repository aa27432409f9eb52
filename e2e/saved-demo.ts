import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { API_PATHS, kitSchemas, savedJobSchema } from '@furrow/contract';
import type { Page } from 'playwright-core';

/** Saves the demo job as a job of the shop's own, past the page; the address of its bench. */
export async function saveDemoJob(page: Page, url: string): Promise<string> {
  const job = await sent(page, url + API_PATHS.jobs, 'POST', { text: await example('penstock-seam') });
  return `/jobs/${savedJobSchema.parse(job).id}`;
}

/** Saves the demo kit as the shop's own, past the page. */
export async function saveDemoKit(page: Page, url: string): Promise<void> {
  const kit = await sent(page, url + API_PATHS.kit, 'PUT', { text: await example('yard-kit'), based_on: 0 });
  kitSchemas.saved.parse(kit);
}

async function example(name: string): Promise<string> {
  return readFile(fileURLToPath(new URL(`../examples/${name}.yaml`, import.meta.url)), 'utf8');
}

async function sent(page: Page, address: string, method: string, body: object): Promise<unknown> {
  return (await page.request.fetch(address, { method, data: body })).json();
}
