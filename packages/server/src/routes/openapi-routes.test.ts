import { API_PATHS, PROGRAM_VERSION } from '@furrow/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from '../build-server.ts';
import { type TestCompany, testCompany } from '../testing/test-company.ts';
import { type TestParts, testParts } from '../testing/test-server.ts';
import type { ZodServer } from './zod-server.ts';

interface Description {
  readonly openapi: string;
  readonly info: { readonly version: string };
  readonly paths: Record<string, Record<string, { readonly responses: Record<string, unknown> }>>;
  readonly components: {
    readonly schemas: Record<string, unknown>;
    readonly securitySchemes: Record<string, unknown>;
  };
  readonly security: readonly unknown[];
}

let test: TestParts;
let server: ZodServer;
let company: TestCompany;
let description: Description;
beforeAll(async () => {
  test = await testParts();
  server = await buildServer(test.parts);
  company = await testCompany();
  await company.server.ready();
  description = (await server.inject(API_PATHS.openapi)).json<Description>();
});
afterAll(async () => {
  await server.close();
  await company.cleanUp();
  await test.cleanUp();
});

describe('GET /api/openapi.json', () => {
  it('is OpenAPI 3.1.0 of this version of the program', () => {
    expect(description.openapi).toBe('3.1.0');
    expect(description.info.version).toBe(PROGRAM_VERSION);
  });

  it('says how a program shows its token', () => {
    expect(description.components.securitySchemes['token']).toMatchObject({ type: 'http', scheme: 'bearer' });
    expect(description.security).toEqual([{ token: [] }]);
  });

  it('describes the addresses of the contract, no more and no fewer', () => {
    const open = Object.keys(description.paths);
    const people = Object.keys(company.server.swagger().paths ?? {});
    const wanted = Object.values(API_PATHS)
      .filter((path) => path.startsWith('/api/') && path !== API_PATHS.openapi)
      .map((path) => path.replace(/:(\w+)/g, '{$1}'));
    expect(people.sort()).toEqual(wanted.sort());
    // where nobody signs in, there is nobody to let in
    const ofPeople = /^\/api\/(?:session\/|accounts|shops|machines|company)/u;
    expect(open.sort()).toEqual(wanted.filter((path) => !ofPeople.test(path)));
  });

  it('refers to no schema that it does not hold, and holds none that nothing refers to', () => {
    const named = [...JSON.stringify(description).matchAll(/"#\/components\/schemas\/([^"]+)"/g)];
    expect([...new Set(named.map(([, name]) => name))].sort()).toEqual(
      Object.keys(description.components.schemas).sort(),
    );
  });

  it('gives every resource a body for its errors', () => {
    const errorReference = '#/components/schemas/Error';
    for (const [path, methods] of Object.entries(description.paths)) {
      for (const { responses } of Object.values(methods)) {
        if (path.startsWith('/api/jobs/{id}'))
          expect(JSON.stringify(responses['404']), path).toContain(errorReference);
      }
    }
    expect(description.components.schemas['Plan']).toMatchObject({ type: 'object' });
    expect(JSON.stringify(description.paths['/api/jobs/{id}']?.['put']?.responses['409'])).toContain(
      '#/components/schemas/Conflict',
    );
  });
});
