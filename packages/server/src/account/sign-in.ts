import type { PeopleStore, StoredAccount } from '@furrow/store';
import { Refused } from '../guard/refused.ts';
import type { Passwords } from './password.ts';
import { hashOf } from './secret.ts';

/** How often signing in may fail before it has to wait: with one name from one place, from one place, with one name [-]. */
const ALLOWED = { 'name and place': 5, place: 30, name: 100 } as const;
/** Longest wait [s]. */
const WAIT_MOST = 900;
/** After a day without a failure nothing is held against anybody [ms]. */
const FORGET = 86_400_000;

/** Lets people in by name and password. */
export interface SignIn {
  /** The account of a name, if the password is its own; else refused, and the more slowly the more often that was so. */
  readonly signIn: (name: string, password: string, place: string) => Promise<StoredAccount>;
}

/**
 * A try counts before it is looked at, so that many at once are not more than one after the other. Who has no account is
 * told the same, after the same time, as who has the wrong password.
 */
export function openSignIn(people: PeopleStore, passwords: Passwords, now: () => Date): SignIn {
  return {
    signIn: async (name, password, place) => {
      const named = hashOf(name.normalize('NFKC').toLowerCase());
      const keys = { 'name and place': `${named} ${place}`, place: `place ${place}`, name: `name ${named}` };
      const failures = await people.failures(Object.values(keys));
      for (const [kind, key] of Object.entries(keys)) {
        const failed = failures.get(key);
        if (failed !== undefined) refuseEarly(failed, ALLOWED[kind as keyof typeof ALLOWED], now());
      }
      const forgetBefore = new Date(now().getTime() - FORGET).toISOString();
      const [count = 0] = await people.countFailures([keys['name and place']], forgetBefore);
      if (count > ALLOWED['name and place'] + 1)
        refuseEarly({ count, at: now().toISOString() }, ALLOWED['name and place'], now());
      const found = await people.accountNamed(name);
      const holds = await passwords.holds(password, found?.password);
      if (found !== undefined && holds && !found.account.shut) {
        await people.forgetFailures([keys['name and place']]);
        return found.account;
      }
      await people.countFailures([keys.place, keys.name], forgetBefore);
      throw new Refused('SIGN_IN_REFUSED', 'Name and password do not go together, or the account is shut.');
    },
  };
}

function refuseEarly(
  { count, at }: { readonly count: number; readonly at: string },
  allowed: number,
  now: Date,
): void {
  if (count < allowed) return;
  const wait = Math.min(WAIT_MOST, 2 ** Math.min(count - allowed, 20));
  // a clock that was set back makes nobody wait longer than the longest wait
  const passed = Math.max(0, (now.getTime() - Date.parse(at)) / 1000);
  const left = Math.ceil(wait - passed);
  if (left <= 0) return;
  throw new Refused('SIGN_IN_THROTTLED', `Signing in failed too often from here. Try again in ${left} s.`);
}
