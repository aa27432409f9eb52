import { sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { ZodServer } from './zod-server.ts';

const INDEX = 'index.html';
const YEAR_SECONDS = 31_536_000;

/** Serves the files of the built app. */
export async function appFiles(server: ZodServer, folder: string): Promise<void> {
  await server.register(fastifyStatic, {
    root: folder,
    wildcard: false,
    index: INDEX,
    cacheControl: false,
    schemaHide: true,
    setHeaders: (response, path) => {
      // The build puts a hash of their content into the names of assets.
      const lasting = path.includes(`${sep}assets${sep}`);
      response.setHeader(
        'cache-control',
        lasting ? `public, max-age=${YEAR_SECONDS}, immutable` : 'no-cache',
      );
    },
  });
}

/** Whether an address that no file has is one of the app's own pages, to be answered with its first page. */
export function isAppPage(request: FastifyRequest): boolean {
  const path = request.url.split('?')[0] ?? '';
  const asksForPage = (request.headers.accept ?? '').includes('text/html');
  return request.method === 'GET' && asksForPage && !path.startsWith('/api/') && !path.includes('.');
}

/** Answers with the app's first page, which reads the address by itself. */
export function sendAppPage(reply: FastifyReply): FastifyReply {
  return reply.sendFile(INDEX);
}
