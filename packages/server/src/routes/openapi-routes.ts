import swagger from '@fastify/swagger';
import { API_PATHS, PROGRAM_VERSION } from '@furrow/contract';
import { createJsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { onlyUsedSchemas } from './only-used-schemas.ts';
import type { ZodServer } from './zod-server.ts';

/** The description of the API, made from the very schemas that check its requests; before all other routes. */
export async function openapiRoutes(server: ZodServer): Promise<void> {
  await server.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Furrow',
        description: 'Plans for mechanised air carbon-arc gouging, and the jobs they are made for.',
        version: PROGRAM_VERSION,
      },
      components: {
        securitySchemes: {
          token: {
            type: 'http',
            scheme: 'bearer',
            description:
              'The access token in the address that Furrow prints when it is started. A browser gets it as a cookie.',
          },
        },
      },
      security: [{ token: [] }],
    },
    // a sentence is text in JSON, and no schema of its own kind
    transform: createJsonSchemaTransform({ zodToJsonConfig: { unrepresentable: 'any' } }),
    transformObject: (document) => onlyUsedSchemas(jsonSchemaTransformObject(document)),
  });
  server.get(API_PATHS.openapi, { schema: { hide: true } }, () => server.swagger());
}
