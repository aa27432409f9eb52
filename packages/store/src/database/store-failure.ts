/** The database cannot be used: not reachable, locked, full, of another version, or lost while it was storing. */
export class StoreFailure extends Error {
  override readonly name = 'StoreFailure';
  readonly code: 'STORE_UNAVAILABLE' | 'STORE_FULL' | 'STORE_HISTORY' | 'STORE_IN_DOUBT';

  constructor(code: StoreFailure['code'], message: string, cause?: unknown) {
    super(message, { cause });
    this.code = code;
  }
}

/** Runs a piece of database work; what the driver throws becomes a `StoreFailure` that a person can read. */
export async function attempt<T>(place: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StoreFailure) throw error;
    throw new StoreFailure(
      isFull(error) ? 'STORE_FULL' : 'STORE_UNAVAILABLE',
      sentenceOf(place, error),
      error,
    );
  }
}

/** Codes with which SQLite, PostgreSQL and the system say that there is no room left. */
const FULL = ['SQLITE_FULL', '53100', 'ENOSPC', 'EDQUOT'];

function isFull(error: unknown): boolean {
  return FULL.includes(String((error as { code?: unknown } | null)?.code));
}

function sentenceOf(place: string, error: unknown): string {
  if (isFull(error)) {
    return `The disk that holds ${place} is full: nothing was saved and nothing was changed. Make room and save again.`;
  }
  const why = error instanceof Error ? error.message : String(error);
  return `The saved jobs in ${place} cannot be used at the moment and nothing was changed: ${why}`;
}
