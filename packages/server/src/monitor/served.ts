/** A request that was answered, for whoever watches over the program. Nothing of what it said, and no secret. */
export interface Served {
  readonly method: string;
  /** Address as the table of routes has it; its parts that name something are not told. */
  readonly route: string;
  readonly status: number;
  /** Time until it was answered [s]. */
  readonly seconds: number;
  /** Code of the refusal; undefined where it was done. */
  readonly code: string | undefined;
  /** Account or machine that asked, by its identifier; undefined for nobody. */
  readonly who: string | undefined;
  readonly shop: string | undefined;
  /** IP address that it came from. */
  readonly from: string;
}

declare module 'fastify' {
  interface FastifyRequest {
    /** Code by which it was refused. */
    refusal: string | undefined;
  }
}
