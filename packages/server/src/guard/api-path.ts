import type { FastifyRequest } from 'fastify';

const API = '/api/';

/**
 * Whether a request is one to the API, however its address is written: by the route that it leads to, which an address
 * like /%61pi/jobs does too, and where it leads to none by the address decoded.
 */
export function isApi(request: FastifyRequest): boolean {
  return (request.routeOptions.url ?? decoded(request.url)).startsWith(API);
}

function decoded(url: string): string {
  const path = url.split('?')[0] ?? '';
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
