import { createHash, randomBytes } from 'node:crypto';

const BYTES = 32;

/** A secret that nobody guesses: of a session, a link or a machine. */
export function newSecret(): string {
  return randomBytes(BYTES).toString('base64url');
}

/** What is kept of a secret: who reads the database cannot sign in by it. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
