import { type Session, sessionSchema } from '@furrow/contract';
import { fetchSession, forgetAnswers, signOut } from '../api/index.ts';
import { keepFor, memoryOf, NO_ACCOUNTS, ownerOf } from '../ui/session/index.ts';

const KNOWN = 'furrow.session';
/** Set while somebody has signed out here and the server was not told yet. */
const LEAVING = 'furrow.signing-out';
const NOBODY: Session = { accounts: true, provider: null, signed_in: null };

/** Remembers who works at this browser, for the next time it is opened without the server. */
export function rememberSession(session: Session): void {
  localStorage.setItem(KNOWN, JSON.stringify(session));
}

/** Who was here last; undefined where that is not known. */
function rememberedSession(): Session | undefined {
  try {
    return sessionSchema.safeParse(JSON.parse(localStorage.getItem(KNOWN) ?? 'null')).data;
  } catch {
    return undefined;
  }
}

/**
 * Who is here: as the server says, else whoever was here last on this device. Nobody who signed out, and nobody whom the server
 * no longer knows.
 */
export async function openSession(): Promise<Session> {
  if (localStorage.getItem(LEAVING) !== null) {
    const told = await signOut();
    if (!told.ok && told.failure.unreached === true) return NOBODY;
    localStorage.removeItem(LEAVING);
  }
  const reply = await fetchSession();
  // without an answer the app shows what it can, and says what it cannot
  if (!reply.ok) return rememberedSession() ?? NO_ACCOUNTS;
  // what was answered to somebody is nobody else's to see
  if (reply.value.accounts && reply.value.signed_in === null) await forgetAnswers();
  rememberSession(reply.value);
  return reply.value;
}

/** Signs out, here at once, with the server as soon as it is reached; nothing of the person stays on this device. */
export async function leaveSession(session: Session): Promise<void> {
  const { signed_in: person } = session;
  if (person === null) return;
  localStorage.setItem(LEAVING, 'yes');
  rememberSession(NOBODY);
  for (const shop of [...person.shops, person.shop]) {
    const owner = ownerOf({ ...session, signed_in: { ...person, shop } });
    if (owner !== undefined) memoryOf(localStorage, owner).clear();
  }
  keepFor(undefined);
  await forgetAnswers();
  const told = await signOut();
  if (told.ok || told.failure.unreached !== true) localStorage.removeItem(LEAVING);
}
