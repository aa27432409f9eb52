import { isUtf8 } from 'node:buffer';
import { REQUEST_BYTES_MOST } from '@furrow/contract';
import type { Originals, Store } from '@furrow/store';
import fastify, { type FastifyReply, type FastifyRequest } from 'fastify';
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { admitted, guardAccess } from './guard/access.ts';
import { isApi } from './guard/api-path.ts';
import { answerClientError } from './guard/client-error.ts';
import { errorReply } from './guard/error-body.ts';
import { errorPage } from './guard/error-page.ts';
import { guardLoopback } from './guard/loopback-guard.ts';
import { Refused } from './guard/refused.ts';
import { securityHeaders } from './guard/security-headers.ts';
import { readExamples } from './reading/read-examples.ts';
import { aboutRoutes } from './routes/about-routes.ts';
import { appFiles, isAppPage, sendAppPage } from './routes/app-files.ts';
import { cardRoutes } from './routes/card-routes.ts';
import { commissioningRoutes } from './routes/commissioning-routes.ts';
import { faultRoutes } from './routes/fault-routes.ts';
import { gaugeRoutes } from './routes/gauge-routes.ts';
import { jobRoutes } from './routes/job-routes.ts';
import { kitRoutes } from './routes/kit-routes.ts';
import { knowledgeRoutes } from './routes/knowledge-routes.ts';
import { liveRoutes, rawRoutes } from './routes/live-routes.ts';
import { loggerRoutes } from './routes/logger-routes.ts';
import { openapiRoutes } from './routes/openapi-routes.ts';
import { paperRoutes } from './routes/paper-routes.ts';
import { planRoutes } from './routes/plan-routes.ts';
import { readingsRoutes } from './routes/readings-routes.ts';
import { runRoutes } from './routes/run-routes.ts';
import type { ZodServer } from './routes/zod-server.ts';
import { openShop } from './shop/open-shop.ts';
import type { ServedShop } from './shop/served-shop.ts';
import type { Work } from './work/open-work.ts';

/** What a server is made of. */
export interface ServerParts {
  readonly store: Store;
  /** Threads that plan and make papers. */
  readonly work: Work;
  /** Threads for what nobody waits for. */
  readonly background: Work;
  /** Files of runs. */
  readonly originals: Originals;
  /** What lets a browser or a program in; left out: whoever reaches the server. */
  readonly token?: string;
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

/** How long is waited for whoever is connected, and how many may be. */
export interface SocketBounds {
  /** For all headers of a request [ms]. */
  readonly headers: number;
  /** For a whole request [ms]. */
  readonly request: number;
  /** For the next request over the same connection [ms]. */
  readonly next: number;
  /** For any sign of life, longer than the longest work [ms]. */
  readonly idle: number;
  /** How many may be connected at a time [-]. */
  readonly connections: number;
}

const AT_WORK: SocketBounds = {
  headers: 10_000,
  request: 30_000,
  next: 30_000,
  idle: 90_000,
  connections: 256,
};
/** What a server that does not listen (a test without a socket) takes for its port. */
const PORT_UNHEARD = 80;

/** Builds the server: the API, the card's page and the app's files, behind the loopback guard. */
export async function buildServer(
  { store, work, background, originals, token, appFolder, exampleFolder, log }: ServerParts,
  bounds: SocketBounds = AT_WORK,
): Promise<ZodServer> {
  const server: ZodServer = fastify({
    bodyLimit: REQUEST_BYTES_MOST,
    requestTimeout: bounds.request,
    keepAliveTimeout: bounds.next,
    connectionTimeout: bounds.idle,
    http: { headersTimeout: bounds.headers, connectionsCheckingInterval: Math.min(bounds.headers / 2, 2000) },
    forceCloseConnections: true,
    clientErrorHandler: (error, socket) => answerClientError(error, socket),
    frameworkErrors: (error, request, reply) => sendError(error, request, reply, log),
  }).withTypeProvider<ZodTypeProvider>();
  server.setValidatorCompiler(validatorCompiler);
  server.setSerializerCompiler(serializerCompiler);
  server.server.maxConnections = bounds.connections;
  readJsonOnly(server);
  const now = (): Date => new Date();
  const shop = openShop({ id: 'main', store, originals, work, background, log, now });
  server.decorateRequest('shop', null as unknown as ServedShop);

  server.addHook('onRequest', async (request, reply) => {
    reply.headers(securityHeaders(request.routeOptions.config.framed === true));
    if (isApi(request)) reply.header('cache-control', 'no-store');
    const address = server.server.address();
    const port = typeof address === 'object' && address !== null ? address.port : PORT_UNHEARD;
    guardLoopback(request, port, isApi(request));
    const entry = request.method === 'GET' ? admitted(request.url, port, token) : undefined;
    if (entry !== undefined) return reply.header('set-cookie', entry.cookie).redirect(entry.to, 303);
    // What is shown in a frame of the app is a page of somebody's job; the app's own files are nobody's.
    if (isApi(request) || request.routeOptions.config.framed === true) {
      guardAccess(request.headers, port, token);
    }
    request.shop = shop.served;
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
  planRoutes(server, work);
  jobRoutes(server);
  kitRoutes(server);
  knowledgeRoutes(server);
  gaugeRoutes(server);
  commissioningRoutes(server);
  readingsRoutes(server, work);
  faultRoutes(server);
  cardRoutes(server, work);
  paperRoutes(server, examples, work);
  runRoutes(server);
  liveRoutes(server, now);
  rawRoutes(server);
  loggerRoutes(server);
  server.addHook('onReady', () => shop.start());
  server.addHook('preClose', () => shop.close());
  if (appFolder !== undefined) await appFiles(server, appFolder);
  return server;
}

/** A form of any page can send plain text without asking first; JSON it cannot. */
function readJsonOnly(server: ZodServer): void {
  server.removeAllContentTypeParsers();
  const parseJson = server.getDefaultJsonParser('error', 'error');
  server.addContentTypeParser<Buffer>('application/json', { parseAs: 'buffer' }, (request, body, done) => {
    // Decoded all the same, what is no UTF-8 would be kept changed.
    if (!isUtf8(body)) done(new Refused('REQUEST_INVALID', 'The content is not valid UTF-8.'));
    else parseJson(request, body.toString('utf8'), done);
  });
}

function sendError(
  error: unknown,
  request: FastifyRequest,
  reply: FastifyReply,
  log: ServerParts['log'],
): FastifyReply {
  const { status, body, fault } = errorReply(error);
  if (fault) log(`${request.method} ${request.url}: ${(error as Error | undefined)?.stack ?? String(error)}`);
  reply.status(status).headers(securityHeaders(false)).header('cache-control', 'no-store');
  reply.serializer(JSON.stringify);
  if (!isApi(request) && (request.headers.accept ?? '').includes('text/html')) {
    return reply.type('text/html; charset=utf-8').serializer(String).send(errorPage(body));
  }
  return reply.type('application/json; charset=utf-8').send(body);
}
