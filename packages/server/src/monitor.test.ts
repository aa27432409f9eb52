import { afterEach, expect, test } from 'vitest';
import { buildServer } from './build-server.ts';
import { openLog, openMetrics, type Served, startMonitor } from './monitor/index.ts';
import { testParts } from './testing/test-server.ts';

const closing: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

/** A server whose answers are counted and written down. */
async function watched() {
  const { parts, cleanUp } = await testParts();
  const metrics = openMetrics();
  const lines: string[] = [];
  const log = openLog({ write: (line) => void lines.push(line) });
  const observer = {
    served: (served: Served) => {
      metrics.served(served);
      log.served(served);
    },
    gauge: metrics.gauge,
  };
  const token = 'x'.repeat(40);
  const server = await buildServer({ ...parts, token, observer });
  closing.push(() => server.close(), cleanUp);
  return { server, metrics, lines, token };
}

test('requests are counted by route, and no secret or name of a thing is told', async () => {
  const { server, metrics, lines, token } = await watched();
  const headers = { authorization: `Bearer ${token}` };
  await server.inject({ url: '/api/jobs', headers });
  await server.inject({ url: '/api/jobs/3f1c0000-0000-4000-8000-000000000000', headers });
  await server.inject({ url: `/?token=${token}` });
  await server.inject({ url: '/api/jobs' });
  const text = await metrics.text();
  expect(text).toContain('furrow_http_requests_total{method="GET",route="/api/jobs",status="200"} 1');
  expect(text).toContain('furrow_http_requests_total{method="GET",route="/api/jobs/:id",status="404"} 1');
  expect(text).toContain('furrow_refusals_total{code="TOKEN_REFUSED"} 1');
  expect(text).toContain('furrow_live_runs 0');
  expect(text).toMatch(/^process_resident_memory_bytes \d+$/mu);
  const told = lines.map((line) => JSON.parse(line) as Record<string, unknown>);
  expect(told[1]).toMatchObject({
    level: 'warn',
    message: 'request',
    route: '/api/jobs/:id',
    status: 404,
    code: 'JOB_NOT_FOUND',
    from: '127.0.0.1',
    at: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/u),
    ms: expect.any(Number),
  });
  expect(lines.join('')).not.toContain(token);
  expect(lines.join('')).not.toContain('3f1c');
  for (const line of lines) expect(line.endsWith('\n')).toBe(true);
});

test('the monitor tells health and metrics, and nothing else', async () => {
  const metrics = openMetrics();
  let trouble: string | undefined;
  const health = async () => (trouble === undefined ? { ok: true } : { ok: false, trouble });
  const monitor = await startMonitor({ health, metrics }, 0);
  closing.push(monitor.close);
  const at = (path: string, method = 'GET') => fetch(`http://127.0.0.1:${monitor.port}${path}`, { method });
  const well = await at('/health');
  expect([well.status, await well.json()]).toEqual([200, { ok: true, version: expect.any(String) }]);
  trouble = 'the database does not answer';
  const ill = await at('/health');
  expect([ill.status, await ill.json()]).toEqual([503, expect.objectContaining({ ok: false, trouble })]);
  const numbers = await at('/metrics');
  expect(numbers.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/u);
  expect(await numbers.text()).toMatch(/^furrow_info\{version="[^"]+"\} 1$/mu);
  expect([(await at('/')).status, (await at('/health', 'POST')).status]).toEqual([404, 405]);
});
