import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { Refused } from '../guard/refused.ts';

/** What one guess costs: 128 MB and about half a second at the usual cost. */
export interface PasswordCost {
  /** Power of two of the rounds [-]. */
  readonly power: number;
}

const PASSWORD_COST: PasswordCost = { power: 17 };
const BLOCK = 8;
const KEY_BYTES = 32;
const SALT_BYTES = 16;
/** Hashes made at once, and how many may wait: each takes much memory. */
const AT_ONCE = 2;
const WAITING_MOST = 30;

/** Makes and holds hashes of passwords. */
export interface Passwords {
  /** The hash to be kept: with its salt and how it was made, so that a later version can make dearer ones. */
  readonly hash: (password: string) => Promise<string>;
  /** Whether a password is the one of a hash. Without a hash it takes as long, and is never so. */
  readonly holds: (password: string, kept: string | null | undefined) => Promise<boolean>;
}

/** Passwords by scrypt, at most two at a time. */
export function openPasswords({ power }: PasswordCost = PASSWORD_COST): Passwords {
  const inTurn = turns();
  const key = (password: string, salt: Buffer, rounds: number): Promise<Buffer> =>
    inTurn(() => derived(password, salt, rounds));
  // what a guess at a name that nobody has is held against
  const nobody = { power, salt: randomBytes(SALT_BYTES), key: randomBytes(KEY_BYTES) };
  return {
    hash: async (password) => {
      const salt = randomBytes(SALT_BYTES);
      const made = await key(password, salt, power);
      return `scrypt$${power}$${salt.toString('base64url')}$${made.toString('base64url')}`;
    },
    holds: async (password, kept) => {
      const known = parsed(kept);
      const against = known ?? nobody;
      const same = timingSafeEqual(await key(password, against.salt, against.power), against.key);
      return same && known !== undefined;
    },
  };
}

function parsed(kept: string | null | undefined): { power: number; salt: Buffer; key: Buffer } | undefined {
  const [, power, salt, key] = /^scrypt\$(\d+)\$([\w-]+)\$([\w-]{43})$/.exec(kept ?? '') ?? [];
  if (salt === undefined || key === undefined) return undefined;
  return { power: Number(power), salt: Buffer.from(salt, 'base64url'), key: Buffer.from(key, 'base64url') };
}

function derived(password: string, salt: Buffer, power: number): Promise<Buffer> {
  const cost = { N: 2 ** power, r: BLOCK, p: 1, maxmem: 256 * BLOCK * 2 ** power };
  return new Promise((resolve, reject) => {
    // the same letters may be typed composed or not
    scrypt(password.normalize('NFKC'), salt, KEY_BYTES, cost, (error, key) =>
      error === null ? resolve(key) : reject(error),
    );
  });
}

function turns(): <T>(work: () => Promise<T>) => Promise<T> {
  const waiting: (() => void)[] = [];
  let underway = 0;
  return async (work) => {
    if (waiting.length >= WAITING_MOST)
      throw new Refused('WORK_BUSY', 'Too many people sign in at once. Try again in a moment.');
    if (underway >= AT_ONCE) await new Promise<void>((resolve) => waiting.push(resolve));
    else underway += 1;
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next === undefined) underway -= 1;
      else next();
    }
  };
}
