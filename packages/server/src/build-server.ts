import { REQUEST_BYTES_MOST } from '@furrow/contract';
import type { Store } from '@furrow/store';
import fastify, { type FastifyReply, type FastifyRequest } from 'fastify';
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { aboutRoutes } from './about-routes.ts';
import { appFiles, isAppPage, sendAppPage } from './app-files.ts';
import { cardRoutes } from './card-routes.ts';
import { answerClientError } from './client-error.ts';
import { commissioningRoutes } from './commissioning-routes.ts';
import { errorReply } from './error-body.ts';
import { errorPage } from './error-page.ts';
import { faultRoutes } from './fault-routes.ts';
import { jobRoutes } from './job-routes.ts';
import { kitRoutes } from './kit-routes.ts';
import { guardLoopback } from './loopback-guard.ts';
import { openapiRoutes } from './openapi-routes.ts';
import { paperRoutes } from './paper-routes.ts';
import { planRoutes } from './plan-routes.ts';
import { readExamples } from './read-examples.ts';
import { Refused } from './refused.ts';
import { securityHeaders } from './security-headers.ts';
import type { ZodServer } from './zod-server.ts';

/** What a server is made of. */
export interface ServerParts {
  readonly store: Store;
  /** Folder of the built app; undefined: the API alone. */
  readonly appFolder: string | undefined;
  /** Folder of the demo jobs and kits. */
  readonly exampleFolder: string;
  /** Is told of every bug that a request ran into. */
  readonly log: (message: string) => void;
}

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The page may be shown in a frame of the app. */
    framed?: boolean;
  }
}

const REQUEST_MILLISECONDS = 30_000;
/** What a server that does not listen (a test without a socket) takes for its port. */
const PORT_UNHEARD = 80;

/** Builds the server: the API, the card's page and the app's files, behind the loopback guard. */
export async function buildServer({ store, appFolder, exampleFolder, log }: ServerParts): Promise<ZodServer> {
  const server: ZodServer = fastify({
    bodyLimit: REQUEST_BYTES_MOST,
    requestTimeout: REQUEST_MILLISECONDS,
    forceCloseConnections: true,
    clientErrorHandler: (error, socket) => answerClientError(error, socket),
    frameworkErrors: (error, request, reply) => sendError(error, request, reply, log),
  }).withTypeProvider<ZodTypeProvider>();
  server.setValidatorCompiler(validatorCompiler);
  server.setSerializerCompiler(serializerCompiler);
  // A form of any page can send plain text without asking first; JSON it cannot.
  server.removeContentTypeParser('text/plain');

  server.addHook('onRequest', async (request, reply) => {
    reply.headers(securityHeaders(request.routeOptions.config.framed === true));
    if (isApi(request)) reply.header('cache-control', 'no-store');
    const address = server.server.address();
    const port = typeof address === 'object' && address !== null ? address.port : PORT_UNHEARD;
    guardLoopback(request.headers, port, isApi(request));
  });
  server.setErrorHandler((error, request, reply) => sendError(error, request, reply, log));
  server.setNotFoundHandler((request, reply) => {
    if (appFolder !== undefined && isAppPage(request)) return sendAppPage(reply);
    const path = request.url.split('?')[0]?.slice(0, 100);
    throw new Refused('PATH_NOT_FOUND', `There is nothing at ${request.method} ${path}.`);
  });

  await openapiRoutes(server);
  const examples = await readExamples(exampleFolder);
  aboutRoutes(server, store, examples);
  planRoutes(server);
  jobRoutes(server, store);
  kitRoutes(server, store.kit);
  commissioningRoutes(server, store);
  faultRoutes(server, store.faultCases);
  cardRoutes(server, store);
  paperRoutes(server, store, examples);
  if (appFolder !== undefined) await appFiles(server, appFolder);
  return server;
}

function isApi(request: FastifyRequest): boolean {
  return request.url.startsWith('/api/');
}

function sendError(
  error: unknown,
  request: FastifyRequest,
  reply: FastifyReply,
  log: ServerParts['log'],
): FastifyReply {
  const { status, body, fault } = errorReply(error);
  if (fault) log(`${request.method} ${request.url}: ${(error as Error | undefined)?.stack ?? String(error)}`);
  reply.status(status).headers(securityHeaders(false)).serializer(JSON.stringify);
  if (!isApi(request) && (request.headers.accept ?? '').includes('text/html')) {
    return reply.type('text/html; charset=utf-8').serializer(String).send(errorPage(body));
  }
  return reply.type('application/json; charset=utf-8').send(body);
}
