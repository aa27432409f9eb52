export { NO_ACCOUNTS, SessionContext, useSession } from './session-context.ts';
