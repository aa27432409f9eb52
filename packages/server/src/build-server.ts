import { isUtf8 } from 'node:buffer';
import { PERMISSIONS, REQUEST_BYTES_MOST, type Right } from '@furrow/contract';
import { type Originals, type Store, THE_SHOP } from '@furrow/store';
import fastify, {
  type FastifyHttpOptions,
  type FastifyReply,
  type FastifyRequest,
  type RawServerDefault,
  type RouteOptions,
} from 'fastify';
import { serializerCompiler, validatorCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { Accounts, type AccountsParts, actorOf, checkRight, shopOf, type Who } from './account/accounts.ts';
import type { CookiePlace } from './account/session-cookie.ts';
import { admitted, guardAccess } from './guard/access.ts';
import { isApi } from './guard/api-path.ts';
import { answerClientError } from './guard/client-error.ts';
import { errorReply } from './guard/error-body.ts';
import { errorPage } from './guard/error-page.ts';
import { guardPlace, loopbackPlace, publicPlace } from './guard/loopback-guard.ts';
import { Refused } from './guard/refused.ts';
import { securityHeaders } from './guard/security-headers.ts';
import type { Served } from './monitor/index.ts';
import { readExamples } from './reading/read-examples.ts';
import { aboutRoutes } from './routes/about-routes.ts';
import { accountRoutes, openSessionRoutes } from './routes/account-routes.ts';
import { appFiles, isAppPage, sendAppPage } from './routes/app-files.ts';
import { cardRoutes } from './routes/card-routes.ts';
import { commissioningRoutes } from './routes/commissioning-routes.ts';
import { companyRoutes } from './routes/company-routes.ts';
import { faultRoutes } from './routes/fault-routes.ts';
import { gaugeRoutes } from './routes/gauge-routes.ts';
import { companyHistoryRoutes, historyRoutes } from './routes/history-routes.ts';
import { jobRoutes } from './routes/job-routes.ts';
import { kitRoutes } from './routes/kit-routes.ts';
import { knowledgeRoutes } from './routes/knowledge-routes.ts';
import { liveRoutes, rawRoutes } from './routes/live-routes.ts';
import { loggerRoutes } from './routes/logger-routes.ts';
import { openapiRoutes } from './routes/openapi-routes.ts';
import { paperRoutes } from './routes/paper-routes.ts';
import { planRoutes } from './routes/plan-routes.ts';
import { providerRoutes } from './routes/provider-routes.ts';
import { readingsRoutes } from './routes/readings-routes.ts';
import { runRoutes } from './routes/run-routes.ts';
import type { ZodServer } from './routes/zod-server.ts';
import { openShops, type Shops } from './shop/open-shops.ts';
import type { ServedShop } from './shop/served-shop.ts';
import type { Work } from './work/open-work.ts';

/** What a server for many people is made of, beside what every server is. */
export interface AccountsOpen extends AccountsParts {
  readonly originalsOf: (shop: string) => Originals;
  /** Where people on the network find it; left out: on this computer only. */
  readonly open?: OpenPlace;
}

/** How a server is reached over the network. */
export interface OpenPlace {
  /** Address that people open, https. */
  readonly address: URL;
  /** Certificate and key, PEM; left out: a proxy before it holds them. */
  readonly tls?: { readonly cert: string; readonly key: string };
  /** IP address of that proxy, which alone may connect. */
  readonly proxy?: string;
}

/** Whoever watches over the program. */
export interface Observer {
  readonly served: (served: Served) => void;
  /** Has a number read when it is wanted. */
  readonly gauge: (name: string, help: string, read: () => number) => void;
}

/** What a server is made of. */
export interface ServerParts {
  readonly store: Store;
  /** Threads that plan and make papers. */
  readonly work: Work;
  /** Threads for what nobody waits for. */
  readonly background: Work;
  /** Files of runs. */
  readonly originals: Originals;
  /** People who sign in, and their shops; left out: one shop, and whoever reaches the server is its own. */
  readonly accounts?: AccountsOpen;
  /** What lets a browser or a program in; left out: whoever reaches the server. */
  readonly token?: string;
  /** Folder of the built app; undefined: the API alone. */
  readonly appFolder: string | undefined;
  /** Folder of the demo jobs and kits. */
  readonly exampleFolder: string;
  /** Is told of every bug that a request ran into. */
  readonly log: (message: string) => void;
  /** Is told of every request that was answered, and reads what goes on; left out: nobody watches. */
  readonly observer?: Observer;
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
  {
    store,
    work,
    background,
    originals,
    accounts: open,
    token,
    appFolder,
    exampleFolder,
    log,
    observer,
  }: ServerParts,
  bounds: SocketBounds = AT_WORK,
): Promise<ZodServer> {
  const sockets = {
    headersTimeout: bounds.headers,
    connectionsCheckingInterval: Math.min(bounds.headers / 2, 2000),
  };
  const settings: FastifyHttpOptions<RawServerDefault> = {
    http: sockets,
    bodyLimit: REQUEST_BYTES_MOST,
    requestTimeout: bounds.request,
    keepAliveTimeout: bounds.next,
    connectionTimeout: bounds.idle,
    forceCloseConnections: true,
    ...(open?.open?.proxy !== undefined && { trustProxy: open.open.proxy }),
    ...(open?.open?.tls !== undefined && { https: { ...open.open.tls, minVersion: 'TLSv1.2', ...sockets } }),
    clientErrorHandler: (error, socket) => answerClientError(error, socket),
    frameworkErrors: (error, request, reply) => sendError(error, request, reply, log),
  };
  // encrypted or not, it is used the same way
  const server: ZodServer = fastify(settings).withTypeProvider<ZodTypeProvider>();
  server.setValidatorCompiler(validatorCompiler);
  server.setSerializerCompiler(serializerCompiler);
  server.server.maxConnections = bounds.connections;
  readJsonOnly(server);
  const now = (): Date => new Date();
  const shops = openShops({
    storeOf: (id) => open?.company.shop(id) ?? store,
    originalsOf: (id) => open?.originalsOf(id) ?? originals,
    work,
    background,
    log,
    now,
  });
  const accounts = open === undefined ? undefined : new Accounts(open);
  server.decorateRequest('shop', null as unknown as ServedShop);
  server.decorateRequest('who', null);
  server.decorateRequest('mayStill', async () => true);
  server.decorateRequest('refusal', undefined);
  server.addHook('onRoute', checkListed);
  if (observer !== undefined) observe(server, observer, shops);

  const portHeard = (): number => {
    const address = server.server.address();
    return typeof address === 'object' && address !== null ? address.port : PORT_UNHEARD;
  };
  const cookiePlace = (): CookiePlace => ({ secure: open?.open !== undefined, port: portHeard() });
  server.addHook('onRequest', async (request, reply) => {
    reply.headers(securityHeaders(request.routeOptions.config.framed === true, open?.open !== undefined));
    if (isApi(request)) reply.header('cache-control', 'no-store');
    const port = portHeard();
    if (open?.open?.proxy !== undefined) guardProxy(request, open.open.proxy);
    guardPlace(
      request,
      open?.open === undefined ? loopbackPlace(port) : publicPlace(open.open.address),
      isApi(request),
    );
    if (accounts === undefined) {
      const entry = request.method === 'GET' ? admitted(request.url, port, token) : undefined;
      if (entry !== undefined) return reply.header('set-cookie', entry.cookie).redirect(entry.to, 303);
      if (isGuarded(request)) guardAccess(request.headers, port, token);
      request.shop = await shops.get(THE_SHOP);
    } else if (isGuarded(request)) {
      request.who = await accounts.whoSends(request.headers, cookiePlace());
      if (request.who?.cookie !== undefined) reply.header('set-cookie', request.who.cookie);
      const right = rightOf(request);
      checkRight(right, request.who);
      const { who } = request;
      if (who !== null) request.mayStill = () => accounts.mayStill(right, who);
      if (request.who !== null && !SHOPLESS.includes(right))
        request.shop = workedOnBy(await shops.get(shopOf(request.who)), request.who);
    }
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
  historyRoutes(server);
  if (accounts === undefined) openSessionRoutes(server);
  else {
    accountRoutes(server, accounts, cookiePlace);
    if (accounts.provider !== undefined)
      providerRoutes(server, accounts, accounts.provider, {
        cookie: cookiePlace,
        origin: () => open?.open?.address.origin ?? `http://127.0.0.1:${portHeard()}`,
        log,
      });
    companyHistoryRoutes(server, accounts.company);
    companyRoutes(server, accounts.company, work);
  }
  server.addHook('onReady', async () => {
    const ids =
      accounts === undefined ? [THE_SHOP] : (await accounts.company.people.shops()).map(({ id }) => id);
    for (const id of ids) await shops.get(id);
  });
  server.addHook('preClose', () => shops.close());
  if (appFolder !== undefined) await appFiles(server, appFolder);
  return server;
}

/** A shop as somebody works on it, whom its history names. */
function workedOnBy(shop: ServedShop, who: Who): ServedShop {
  return { ...shop, store: shop.store.by(actorOf(who)) };
}

/** Rights to what belongs to no shop. */
const SHOPLESS: readonly Right[] = ['open', 'own', 'administer'];

/** What is shown in a frame of the app is a page of somebody's job; the app's own files are nobody's. */
function isGuarded(request: FastifyRequest): boolean {
  return isApi(request) || request.routeOptions.config.framed === true;
}

/** The right that a request asks for; an address that leads nowhere is told so to people of the company only. */
function rightOf({ method, routeOptions: { url } }: FastifyRequest): Right {
  if (url === undefined) return 'own';
  return PERMISSIONS[`${method === 'HEAD' ? 'GET' : method} ${url}`] ?? 'administer';
}

/** Whoever writes a route says in the one table whom it is for. */
function checkListed({ method, url, config }: RouteOptions): void {
  if (!url.startsWith('/api/') && config?.framed !== true) return;
  for (const each of [method].flat())
    if (each !== 'HEAD' && PERMISSIONS[`${each} ${url}`] === undefined)
      throw new Error(`${each} ${url} is missing in the table of permissions`);
}

/** Only the proxy that was named speaks to this program, and only of what reached it encrypted. */
function guardProxy(request: FastifyRequest, proxy: string): void {
  const from = request.socket.remoteAddress?.replace(/^::ffff:/u, '');
  if (from === proxy && request.protocol === 'https') return;
  throw new Refused(
    'HOST_REFUSED',
    'This program is reached by its proxy only, which says by X-Forwarded-Proto that the line to it is encrypted.',
  );
}

/** Tells of each request when its answer is out: by which route, never by the address that was sent. */
function observe(server: ZodServer, observer: Observer, shops: Shops): void {
  server.addHook('onResponse', async (request, reply) => {
    const { method, routeOptions, refusal, who } = request;
    observer.served({
      method,
      route: routeOptions.url ?? 'none',
      status: reply.statusCode,
      seconds: reply.elapsedTime / 1000,
      code: refusal,
      who: who?.id,
      shop: who?.shop ?? undefined,
      from: request.ip,
    });
  });
  observer.gauge('furrow_live_runs', 'Live runs that this program gathers.', () => shops.liveRuns());
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
  request.refusal = body.code;
  reply.status(status).headers(securityHeaders(false)).header('cache-control', 'no-store');
  reply.serializer(JSON.stringify);
  if (!isApi(request) && (request.headers.accept ?? '').includes('text/html')) {
    return reply.type('text/html; charset=utf-8').serializer(String).send(errorPage(body));
  }
  return reply.type('application/json; charset=utf-8').send(body);
}
