/** What a person may be in a shop. An administrator is one of the whole company, and no member is needed for it. */
export type ShopRole = 'viewer' | 'operator' | 'engineer' | 'inspector';

/** A shop of the company. */
export interface StoredShop {
  readonly id: string;
  readonly name: string;
}

/** A person who may sign in. */
export interface StoredAccount {
  readonly id: string;
  /** As it was written; no two differ in case alone. */
  readonly name: string;
  readonly administrator: boolean;
  /** Whether it is shut: nobody signs in by it. */
  readonly shut: boolean;
  /** Whether a password was ever set by its one-time link. */
  readonly opened: boolean;
  /** Role by shop. */
  readonly shops: Readonly<Record<string, ShopRole>>;
}

/** What an administrator sets of an account. */
export type AccountRights = Pick<StoredAccount, 'administrator' | 'shut' | 'shops'>;

/** What came of setting the rights of an account. */
export type AccountOutcome = 'set' | 'not found' | 'last administrator' | 'unknown shop';

/** A sign-in that lasts. What opens it is known by its hash alone. */
export interface StoredSession {
  readonly account: StoredAccount;
  /** The shop that is looked at. */
  readonly shop: string | null;
  /** When what opens it was made or last exchanged (ISO 8601, UTC). */
  readonly made_at: string;
  readonly ends_at: string;
}

/** A token of a logger or a gateway: it brings readings into one shop and does nothing else. */
export interface StoredMachine {
  readonly id: string;
  readonly shop: string;
  readonly name: string;
  readonly made_at: string;
}

/** Where the company's shops and people are kept. Secrets come in as hashes only. The rules are those of the job store. */
export interface PeopleStore {
  shops(): Promise<readonly StoredShop[]>;
  /** Opens a shop, or names one anew. */
  putShop(shop: StoredShop): Promise<void>;
  accounts(): Promise<readonly StoredAccount[]>;
  /** Whether somebody is an administrator whose account is open, or waits for its one-time link to be used. */
  hasAdministrator(): Promise<boolean>;
  /** False where the name is taken. */
  addAccount(account: {
    readonly id: string;
    readonly name: string;
    readonly administrator: boolean;
  }): Promise<boolean>;
  /** The last administrator stays one. Its sessions go where it is shut. */
  setRights(id: string, rights: AccountRights): Promise<AccountOutcome>;
  /** The account of a name with the hash of its password; null before one was set. */
  accountNamed(
    name: string,
  ): Promise<{ readonly account: StoredAccount; readonly password: string | null } | undefined>;
  /** The account that a provider knows by a subject. */
  identified(issuer: string, subject: string): Promise<StoredAccount | undefined>;
  /** Binds an account to what a provider knows its person by, for ever; false where it, or the account, is bound already. */
  bindIdentity(issuer: string, subject: string, accountId: string): Promise<boolean>;
  /** Sets the hash of a password; all sessions and links of the account go. */
  setPassword(id: string, password: string): Promise<void>;
  addLink(hash: string, accountId: string, endsAt: string): Promise<void>;
  /** The account of a link that still holds. */
  linked(hash: string): Promise<StoredAccount | undefined>;
  /** Sets the first or a new password by a link, once: undefined where it does not hold. */
  useLink(hash: string, password: string): Promise<StoredAccount | undefined>;
  addSession(hash: string, accountId: string, shop: string | null, endsAt: string): Promise<void>;
  /** A session that still holds, of an account that is not shut. */
  session(hash: string): Promise<StoredSession | undefined>;
  /** Gives a session a new secret; the one before holds until a time, for requests under way. False if another did so. */
  exchangeSession(hash: string, next: string, holdsUntil: string): Promise<boolean>;
  setSessionShop(hash: string, shop: string): Promise<void>;
  endSession(hash: string): Promise<void>;
  endSessionsOf(accountId: string): Promise<void>;
  machines(): Promise<readonly StoredMachine[]>;
  addMachine(machine: Omit<StoredMachine, 'made_at'>, hash: string): Promise<void>;
  machine(hash: string): Promise<StoredMachine | undefined>;
  eraseMachine(id: string): Promise<boolean>;
  /** Counts a failure under each key, and gives what each counts now; one not seen since `forgetBefore` begins at 1. */
  countFailures(keys: readonly string[], forgetBefore: string): Promise<readonly number[]>;
  /** What each key counts, and when it counted last. */
  failures(
    keys: readonly string[],
  ): Promise<ReadonlyMap<string, { readonly count: number; readonly at: string }>>;
  forgetFailures(keys: readonly string[]): Promise<void>;
}
