import type { Session } from '@furrow/contract';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** A computer of one's own, where nobody signs in. */
export const NO_ACCOUNTS: Session = { accounts: false, provider: null, signed_in: null };

/** Who is signed in, for whatever is shown. */
export const SessionContext = createContext<Session>(NO_ACCOUNTS);

/** Who is signed in. */
export function useSession(): Session {
  return useContext(SessionContext);
}
