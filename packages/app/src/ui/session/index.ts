export { keepFor, memoryOf, ownerOf, ownMemory } from './own-memory.ts';
export { NO_ACCOUNTS, SessionContext, useSession } from './session-context.ts';
