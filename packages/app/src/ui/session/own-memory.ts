import type { Session } from '@furrow/contract';

/** Who works at this browser: an account in a shop; nobody by name on a computer of one's own. */
export interface Owner {
  readonly account: string;
  readonly shop: string;
}

/** Who works at this browser by what the server knows of them. */
export function ownerOf({ signed_in: person }: Session): Owner | undefined {
  return person === null ? undefined : { account: person.name, shop: person.shop?.id ?? '' };
}

let owner: Owner | undefined;

/** From now on, what is not saved yet is kept for this person in this shop alone. */
export function keepFor(next: Owner | undefined): void {
  owner = next;
}

/** What this browser keeps for whoever works at it: another person, or another shop, meets nothing of it. */
export function ownMemory(): Storage {
  return owner === undefined ? localStorage : memoryOf(localStorage, owner);
}

/** The part of a memory that belongs to one person in one shop. */
export function memoryOf(memory: Storage, { account, shop }: Owner): Storage {
  const prefix = `${JSON.stringify([shop, account])}/`;
  const keys = (): string[] =>
    Array.from({ length: memory.length }, (_, i) => memory.key(i)!).filter((key) => key.startsWith(prefix));
  return {
    get length() {
      return keys().length;
    },
    key: (index) => keys()[index]?.slice(prefix.length) ?? null,
    getItem: (key) => memory.getItem(prefix + key),
    setItem: (key, value) => memory.setItem(prefix + key, value),
    removeItem: (key) => memory.removeItem(prefix + key),
    clear: () => {
      for (const key of keys()) memory.removeItem(key);
    },
  };
}
